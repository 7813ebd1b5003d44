package loopwright.exposure;

import loopwright.problem.Problem;

/** Why an impact review was not signed. */
public enum ImpactProblem implements Problem {
  NO_SUCH("X-101", "There is no impact review {0}."),
  SIGNED(
      "X-102",
      "{0} was signed off already, by {1}. A second word on it belongs into the record"
          + " of what was done since.");

  private final String code;
  private final String sentence;

  ImpactProblem(String code, String sentence) {
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
