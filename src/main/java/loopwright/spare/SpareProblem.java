package loopwright.spare;

import loopwright.problem.Problem;

/** Why a part was not put aside or not released. */
public enum SpareProblem implements Problem {
  NOT_IN_SCOPE("X-101", "That loop is not in the scope of {0}. Take it in first."),
  NO_SLOT("X-102", "Choose in which slot the part is to sit."),
  NOT_ON_A_SHELF("X-103", "{0} is {1}, not in stock. Only what lies on a shelf can be put aside."),
  DOES_NOT_MATCH("X-104", "{0} does not make {1} fit to be left so: {2}"),
  HELD("X-105", "{0} is put aside for {1} already. Release it there, or take another."),
  NOT_HELD("X-106", "That part is held no longer. Look at the list again."),
  SLOT_TAKEN("X-107", "{0} is put aside for that slot of {1} already. Release it first."),
  DEALT_ANEW(
      "X-108",
      "Nothing was taken over: stock, outages or what is put aside changed since this dealing was"
          + " worked out. Look at the new one below and take that over."),
  NOTHING_TO_DEAL("X-109", "There is nothing to change: all that can be served is put aside."),
  NO_WISH("X-110", "Nobody wants a spare for that slot any more. Look at the list again."),
  WISHED_BEFORE("X-111", "A spare for that slot of {0} is wanted already.");

  private final String code;
  private final String sentence;

  SpareProblem(String code, String sentence) {
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
