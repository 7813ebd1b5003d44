package loopwright.concession;

import loopwright.problem.Problem;

/** Why a concession was not asked for, decided on or ended. */
public enum ConcessionProblem implements Problem {
  UNKNOWN_PARTS(
      "N-101",
      "A concession is bound to exactly the parts it names, and here not all are known. Read their"
          + " labels first; what is unknown is never covered."),
  NOT_REFUSED(
      "N-102", "{0} is not refused for these parts, so there is nothing to permit. Leave it out."),
  NO_RULE("N-103", "Choose at least one refused rule that the concession shall cover."),
  ENDS_BEFORE("N-104", "It would have ended before it began. Give a moment in the future."),
  TOO_LONG("N-105", "A {0} concession lasts {1} at most. Give an earlier end."),
  SAME_PERSON("N-106", "You asked for it. Another person has to decide on it."),
  ENGINEER_DECIDES(
      "N-107",
      "A full concession is decided by an engineer. Ask one, or ask for a provisional one."),
  NOT_WAITING("N-108", "{0} is no longer waiting: it is {1}. Look at it again."),
  NOT_STANDING("N-109", "{0} doesn't stand: it is {1}. There is nothing to withdraw."),
  NO_SUCH("N-110", "There is no concession {0}."),
  UNREAD_PARTS(
      "N-111", "The parts can't be taken as typed. Go back to the loop and choose them again.");

  private final String code;
  private final String sentence;

  ConcessionProblem(String code, String sentence) {
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
