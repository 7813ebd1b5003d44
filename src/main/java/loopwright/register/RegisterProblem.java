package loopwright.register;

import loopwright.problem.Problem;

/** Why something about a part, a family or a profile was not recorded. */
public enum RegisterProblem implements Problem {
  DUPLICATE_SERIAL(
      "R-101",
      "serial",
      "Serial {0} of {1} {2} stands for {3} already. Open that part, or read the marking again."),
  DUPLICATE_SHOP_NUMBER(
      "R-102",
      "shop-number",
      "Shop number {0} belongs to {1} already. Open that part, or give the next free number."),
  NO_NAME(
      "R-103",
      "serial",
      "Give the serial as stamped on the part; where it has none or it can't be read, give a shop"
          + " number."),
  IMPOSSIBLE_LENGTH(
      "R-104", "length", "A length of {0} can't be. Give more than 0 and at most {1} m ({2} ft)."),
  NOT_A_NUMBER("R-105", "length", "“{0}” is not a number. Give {1}, such as {2}."),
  NO_EVIDENCE(
      "R-106",
      "evidence",
      "Say how the length is known: read on part, certificate, measured, drawing, inferred or"
          + " assumed."),
  UNKNOWN_FAMILY(
      "R-107", "family", "There is no family {0}. Choose one of the list, or have it added first."),
  UNKNOWN_WORD("R-108", "", "“{0}” is not {1}. Give one of: {2}."),
  REASON_NEEDED("R-109", "reason", "Say why: whoever reads this later will ask."),
  STILL_FITTED(
      "R-110",
      "",
      "{0} is fitted at {1} ({2}). Record first what was taken out there; a part that is fitted"
          + " can be quarantined, not {3}."),
  IN_FUTURE("R-111", "from", "{0} is still to come. Give the moment since which it has been so."),
  NOT_THERE("R-112", "", "There is no {0} {1}. Check the number, or look for it."),
  FAMILY_TAKEN("R-113", "code", "A family {0} exists already. Choose another code, or open it."),
  BAD_UNIT("R-114", "length", "“{0}” is not a unit of length for parts. Give m or ft."),
  OUT_OF_RANGE("R-115", "", "{0} can't be {1}. Give {2}."),
  ALREADY_SO("R-116", "", "{0} is {1} already."),
  SAME_FAMILY("R-117", "other", "A family is interchangeable with itself. Choose two."),
  PAIR_KNOWN("R-118", "other", "{0} and {1} are entered as interchangeable already."),
  UNKNOWN_PROFILE("R-119", "profile", "There is no tolerance profile {0}. Choose one of the list."),
  KIND_IS_PLACED(
      "R-120",
      "kind",
      "{0} has been recorded in a loop as a {1}; its kind can't be changed any more. Quarantine it"
          + " and register the part anew under its right kind."),
  BAD_PLACE_IN_LIST("R-121", "", "That place in the list can't be read. Begin at its first page."),
  NO_KIND_OF_LENGTH(
      "R-122", "part", "Lengths belong to probe, extension cable or driver, not {0}."),
  LENGTH_TWICE("R-123", "lengths", "{0} {1} stands twice in the family's list."),
  BAD_RANGE("R-124", "range", "The linear range has to rise from its first gap to its last.");

  private final String code;
  private final String field;
  private final String sentence;

  RegisterProblem(String code, String field, String sentence) {
    this.code = code;
    this.field = field;
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

  /** The field of a form or the column of a file that it concerns; empty for several. */
  public String field() {
    return field;
  }
}
