package loopwright.kit;

import loopwright.problem.Problem;

/** Why a kit was not made, dissolved or used. */
public enum KitProblem implements Problem {
  NO_SET("KT-101", "That names no whole set. Scan probe, what lies between, and driver first."),
  NOT_ON_A_SHELF("KT-102", "{0} is {1}, not in stock. Only what lies on a shelf is kept as a kit."),
  IN_A_KIT("KT-103", "{0} belongs to {1} already. Dissolve that one first, or take another part."),
  NAME_TAKEN("KT-104", "A kit is called {0} already: {1}. Give this one another name."),
  DISSOLVED("KT-105", "{0} was dissolved: {1}"),
  NO_LOOP("KT-106", "There is no loop {0}."),
  NO_PART("KT-107", "There is no part {0} in the register."),
  NO_KIT("KT-108", "There is no kit {0}. Give its number, like KIT-3.");

  private final String code;
  private final String sentence;

  KitProblem(String code, String sentence) {
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
