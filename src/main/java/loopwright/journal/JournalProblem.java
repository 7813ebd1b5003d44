package loopwright.journal;

import loopwright.problem.Problem;

/** Why the journal could not be read. */
public enum JournalProblem implements Problem {
  UNKNOWN_FORMAT(
      "J-101",
      "Entry {0} is written in format {1}, which this program does not read. Use the program that"
          + " wrote it, or a newer one."),
  NO_ENTRY("J-102", "There is no entry {0}; the last one is {1}."),
  LOOKS_AHEAD("J-103", "{0} is still to come. Look at a moment that has passed; empty means now.");

  private final String code;
  private final String sentence;

  JournalProblem(String code, String sentence) {
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
