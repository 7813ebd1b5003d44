package loopwright.cli;

import loopwright.problem.Problem;

/** Why a call can't be carried out. */
enum CliProblem implements Problem {
  UNKNOWN_PROFILE("A-101", "There is no profile '{0}'. Did you mean '{1}'? Known are: {2}."),
  UNKNOWN_MARK("A-102", "'{0}' is not a decimal mark. Say point or comma.");

  private final String code;
  private final String sentence;

  CliProblem(String code, String sentence) {
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
