package loopwright.label;

import loopwright.problem.Problem;

/** Why a label was not read, or not printed. */
public enum LabelProblem implements Problem {
  NO_CODE(
      "Q-101",
      "“{0}” is not the code of a label. Codes have seven or more letters and digits and begin"
          + " with 1C (parts) or 1P (loops)."),
  MISREAD(
      "Q-102",
      "“{0}” was misread or mistyped: its last character, which checks the others, does not fit."
          + " Read it again; codes never hold I, L, O or U."),
  NEWER(
      "Q-103",
      "The label {0} was made by a newer version of this program. Type the serial instead, or have"
          + " the program brought up to date."),
  NO_SUCH_RECORD(
      "Q-104",
      "The code {0} is sound, but this register holds no {1} of that number. The label may come from"
          + " another register; look for the serial."),
  FOREIGN(
      "Q-105",
      "This label belongs to another register, at {0}; its codes mean other parts there. Type the"
          + " serial instead. If {0} is a former address of this register, start it with"
          + " --former-address {0}."),
  NO_BASE(
      "Q-106",
      "No labels can be printed yet: nobody has said under which address this register will be"
          + " found for years to come. Start it with --base-address, for instance"
          + " --base-address https://loops.example."),
  BAD_BASE(
      "Q-107",
      "“{0}” can't be the address that labels lead to: {1}. Give it like https://loops.example or"
          + " http://10.0.0.5:8470."),
  NOTHING_CHOSEN("Q-108", "No label is chosen. Tick at least one."),
  TOO_MANY("Q-109", "{0} labels are more than one document takes. Print at most {1} at a time."),
  TOO_SMALL(
      "Q-110",
      "Labels of {0} × {1} mm are too small: {2}. Choose fewer columns or rows, or a larger label."),
  BAD_NUMBER("Q-111", "{0} can't be {1}. Give {2}."),
  NO_GLYPH(
      "Q-112",
      "{0} holds the character {1}, which the labels' font does not have. Correct the part's name,"
          + " or write this label by hand.");

  private final String code;
  private final String sentence;

  LabelProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
