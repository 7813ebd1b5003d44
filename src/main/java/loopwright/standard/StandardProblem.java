package loopwright.standard;

import loopwright.problem.Problem;

/** Why a reference standard, its certificate or an event of it was not taken. */
public enum StandardProblem implements Problem {
  NO_KIND("E-101", "Choose what it is: voltmeter, spindle micrometer or other."),
  CODE_TAKEN("E-102", "{0} is in the register already: {1}. Give this one another code."),
  ISSUED_IN_FUTURE(
      "E-103",
      "It would have been issued on {0}, and today is {1}. Give the day on the certificate."),
  DUE_BEFORE_ISSUE("E-104", "Due on {0}, but issued on {1}. The due date lies after the issue."),
  COVERAGE_FACTOR(
      "E-105",
      "A coverage factor of {0} can't be: it lies between 1 and 20, mostly at 2. Look at the"
          + " certificate."),
  RANGE_REVERSED(
      "E-106", "Range {0}: it begins at {1} and ends at {2}. Give the smaller end first."),
  RANGE_NEGATIVE(
      "E-107", "Range {0}: {1} is negative. Give ranges without sign; outputs count by magnitude."),
  UNCERTAINTY(
      "E-108",
      "Range {0}: an uncertainty of {1} can't be. Give the expanded uncertainty, above zero."),
  SCALE(
      "E-109",
      "Range {0}: {1} % as the uncertainty of the scale can't be. Give 0 to 50 %, or leave it empty."),
  RESOLUTION(
      "E-110",
      "Range {0}: {1} as the smallest step can't be. Give zero or more, or leave it empty."),
  RANGES_OVERLAP("E-111", "Ranges {0} and {1} overlap. Each reading belongs to one range."),
  NO_RANGE("E-112", "Give at least one range with its uncertainty."),
  RANGES_OF_OTHER("E-113", "Ranges of other equipment play no part. Leave them empty."),
  CERTIFICATE_TAKEN("E-114", "Certificate {0} of {1} is on record for it already."),
  NO_SUCH("E-115", "There is no reference standard {0} in the register."),
  NO_CERTIFICATE_THEN(
      "E-116",
      "{0} had no certificate on {1}: its first is of {2}. Enter the one of then, or choose other"
          + " equipment."),
  EVENT_KIND("E-117", "Choose what happened."),
  EVENT_IN_FUTURE("E-118", "{0} is in the future. Give the day on which it happened."),
  AGAINST_ITSELF("E-120", "{0} can't be calibrated or checked against itself. Choose another one."),
  REFERENCE_WITHOUT(
      "E-121",
      "{0} had no certificate on {1}, so nothing could be calibrated against it. Enter that first, or"
          + " leave it out."),
  LARGE_UNCERTAINTY(
      "E-119",
      "Range {0}: an uncertainty of {1} is larger than the range. Look at unit and decimal mark.");

  private final String code;
  private final String sentence;

  StandardProblem(String code, String sentence) {
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
