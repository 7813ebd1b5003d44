package loopwright.field;

import loopwright.problem.Problem;

/** Why a device is not listened to, or what it sent was not taken. */
public enum FieldProblem implements Problem {
  NO_TOKEN(
      "U-101",
      401,
      "This needs the token of a device that took a pack along; a sign-in does not do."),
  UNKNOWN_TOKEN(
      "U-102",
      401,
      "This device is not known here. What was entered stays on it: sign in and take the pack along"
          + " again."),
  ENDED(
      "U-103",
      401,
      "{0} ended what this device may do: {1}. What was entered stays on it: sign in and take the"
          + " pack along again to send it."),
  EXPIRED(
      "U-104",
      401,
      "This device was allowed to send until {0}. What was entered stays on it: sign in and take the"
          + " pack along again to send it."),
  NOT_ALLOWED(
      "U-105",
      401,
      "The account of {0}, who took this pack along, may not record work any more. What was entered"
          + " stays on the device: somebody else can sign in and take the pack along on it."),
  NOT_ISSUED("U-106", 422, "{0} has no pack yet, so there is nothing to take along."),
  UNREADABLE("U-107", 422, "This is no entry that can be read: {0}. It stays on the device."),
  OTHER_CONTENT(
      "U-108",
      409,
      "An entry of that identity came before with other content. Nothing of it was changed; enter it"
          + " anew."),
  NEVER_IN_PACK("U-109", 422, "{0} was in no revision of the pack of {1}."),
  NOTHING("U-110", 422, "Nothing is filled in for {0}."),
  NO_DEVICE("U-111", 404, "There is no such device."),
  ENDED_ALREADY("U-112", 422, "This device was ended already."),
  NO_ENTRY("U-113", 404, "There is no such entry."),
  DECIDED_ALREADY("U-114", 422, "Somebody decided about this entry already."),
  TOO_MANY_DEVICES(
      "U-115", 422, "{0} is on {1} devices already. End those that are not used any more.");

  private final String code;
  private final int status;
  private final String sentence;

  FieldProblem(String code, int status, String sentence) {
    this.code = code;
    this.status = status;
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

  int status() {
    return status;
  }
}
