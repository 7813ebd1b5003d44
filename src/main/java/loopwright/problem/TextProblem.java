package loopwright.problem;

/** What is wrong with a text, whatever it stands for. */
public enum TextProblem implements Problem {
  MISSING("T-101", "Give {0}."),
  TOO_LONG("T-102", "{0} has {1} characters; at most {2} are kept. Shorten it."),
  UNREADABLE("T-103", "{0} holds a character that can't be shown. Type it anew.");

  private final String code;
  private final String sentence;

  TextProblem(String code, String sentence) {
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
