package loopwright.mounting;

import loopwright.problem.Problem;

/** Why a mounting was not recorded. */
public enum MountingProblem implements Problem {
  HOURS("N-101", "{0} h is no time for the work on one loop. Give hours above 0, at most {1}.");

  private final String code;
  private final String sentence;

  MountingProblem(String code, String sentence) {
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
