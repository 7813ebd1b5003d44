package loopwright.plant;

import loopwright.problem.Problem;

/** Why something about the plant was not recorded. */
public enum PlantProblem implements Problem {
  NOT_THERE("G-101", "There is no {0} {1}. Check the spelling, or add it first."),
  CODE_TAKEN("G-102", "{0} {1} exists already. Choose another code, or open that one."),
  TAG_TAKEN(
      "G-103",
      "The tag {0} stands at {1} already. A tag is never given twice, not even after its point is"
          + " retired: choose another one."),
  BAD_ZONE(
      "G-104",
      "“{0}” is not a time zone. Give a name of the IANA list, such as Europe/Berlin or"
          + " America/Chicago."),
  NOT_A_NUMBER("G-105", "“{0}” is not a number. Give {1}, such as {2}."),
  OUT_OF_RANGE("G-106", "{0} can't be {1}. Give {2}."),
  BAD_UNIT("G-107", "“{0}” is not a unit of {1}. Give {2}."),
  UNKNOWN_WORD("G-108", "“{0}” is not {1}. Give one of: {2}."),
  CHANNEL_TAKEN("G-109", "Rack {0}, slot {1}, channel {2} exists already at this site."),
  LIMITS_CROSSED("G-110", "{0}: the low limit {1} is not below the high limit {2}."),
  SCALE_NEEDS_UNIT("G-111", "{0} needs its unit: {1}."),
  LINKED("G-112", "{0} is tied to that channel already."),
  OTHER_SITE("G-113", "{0} and that channel belong to different sites.");

  private final String code;
  private final String sentence;

  PlantProblem(String code, String sentence) {
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
