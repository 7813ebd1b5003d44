package loopwright.scan;

import loopwright.problem.Problem;

/** Why a scanned text was not taken. */
public enum ScanProblem implements Problem {
  UNKNOWN(
      "V-101",
      "Nothing in the register is called “{0}”. Scan it again, or type the serial as it is stamped"
          + " on the part."),
  NO_LABEL("V-102", "“{0}” is an address of this register, but not that of a part or a loop."),
  PLACE_TAKEN(
      "V-103",
      "{0} is a {1}, and {2} is here already. A loop has only one; take the other one out first, or"
          + " put this one in its place."),
  NOT_IN_CHAIN(
      "V-104",
      "{0} is a {1}. It stands behind the driver and is not part of the lengths that are checked"
          + " here."),
  TOO_MANY("V-105", "{0} would be the {1}th part between probe and driver; {2} is the most."),
  NO_PART("V-106", "There is no part with the number {0} in this register. It was left out."),
  NO_LOOP("V-107", "There is no loop {0}. It was left out."),
  NO_CODE_SEEN(
      "V-108",
      "No code was found in the picture. Come closer, so that the code fills half of it, keep still,"
          + " and keep glare off the label; or type the serial."),
  TOO_LONG("V-109", "What was scanned has {0} characters; no label or serial has more than {1}.");

  private final String code;
  private final String sentence;

  ScanProblem(String code, String sentence) {
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
