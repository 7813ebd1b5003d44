package loopwright.cli;

import loopwright.problem.Problem;

/** Why a call can't be carried out. */
enum CliProblem implements Problem {
  UNKNOWN_PROFILE("A-101", "There is no profile '{0}'. Did you mean '{1}'? Known are: {2}."),
  UNKNOWN_MARK("A-102", "'{0}' is not a decimal mark. Say point or comma."),
  NOT_AN_UNCERTAINTY("A-103", "{0}: '{1}' is not a number. Give a standard uncertainty in {2}."),
  NEGATIVE_UNCERTAINTY(
      "A-104", "{0}: {1} is negative. An uncertainty is a spread; give it without a sign."),
  LARGE_UNCERTAINTY("A-105", "{0}: {1} is larger than any such uncertainty. Give it in {2}."),
  NO_UNCERTAINTY(
      "A-106",
      "All uncertainties are zero. Give at least one above zero, or leave all of them out:"
          + " equipment without any uncertainty proves nothing."),
  UNKNOWN_RULE("A-107", "'{0}' is not a decision rule. Say simple or guarded."),
  LONE_RULE(
      "A-108",
      "--rule decides with uncertainties, and none was given. Give --u-volts, --u-gap-um and"
          + " --u-gap-scale, or leave --rule out."),
  NO_PASSWORD_FILE(
      "A-119",
      "{0} can't be read as the file with the keystore's password. Check its name and who may read"
          + " it."),
  UNFIT_CURVE("A-120", "{0}: {1}"),
  UNKNOWN_PLACE("A-121", "'{0}' is no place to measure. Say driver, barrier, rack or monitor.");

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
