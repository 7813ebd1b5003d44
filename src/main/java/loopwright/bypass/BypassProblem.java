package loopwright.bypass;

import loopwright.problem.Problem;

/** Why a bypass was not entered, or a step of it not taken. */
public enum BypassProblem implements Problem {
  NO_SUCH("Y-101", "There is no bypass {0}."),
  ENDS_BEFORE("Y-102", "It would expire before it began. Give a later moment."),
  IS_OFF("Y-103", "{0} is {1}; nothing can be added to it."),
  REMOVED_BEFORE("Y-104", "{0} is removed already; now a second person proves it."),
  NOT_REMOVED("Y-105", "{0} is not removed yet, so there is nothing to prove."),
  SAME_PERSON(
      "Y-106",
      "You removed it, or entered that it was removed. A second person has to prove that it is off."),
  NO_LOOP("Y-107", "There is no loop {0}. Give the tag as the plant writes it."),
  IN_FUTURE("Y-108", "It would begin in the future. Enter it when it is on."),
  HANDED_BEFORE("Y-109", "It is handed over to {0} already; now the other one acknowledges it."),
  NOT_HANDED("Y-110", "{0} is not handed over to anybody, so there is nothing to acknowledge."),
  OWN_HAND_OVER("Y-111", "You handed it over. Whoever takes it over acknowledges that.");

  private final String code;
  private final String sentence;

  BypassProblem(String code, String sentence) {
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
