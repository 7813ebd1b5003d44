package loopwright.temporary;

import loopwright.problem.Problem;

/** Why a temporary fit was not taken, or not changed. */
public enum TemporaryProblem implements Problem {
  NO_PART("TF-101", "Nothing is known to sit in that slot of {0}. Record what is fitted first."),
  PAST_DAY("TF-102", "{0} is over already. Give the day by which the part is to come out."),
  MARKED_BEFORE(
      "TF-103", "{0} in {1} is marked as fitted for a time already. Give it another day."),
  NOT_OPEN("TF-104", "That temporary fit is over or settled. Look at the list again."),
  NO_STEP("TF-105", "Choose whether it gets another day or stays for good.");

  private final String code;
  private final String sentence;

  TemporaryProblem(String code, String sentence) {
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
