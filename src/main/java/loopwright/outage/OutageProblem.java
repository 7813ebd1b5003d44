package loopwright.outage;

import loopwright.problem.Problem;

/** Why an outage, its scope or its steps were not taken. */
public enum OutageProblem implements Problem {
  ENDS_BEFORE(
      "O-101", "The window would end on {1}, before it begins on {0}. Give a later last day."),
  NO_TRAIN("O-102", "Choose at least one train that stands still."),
  OTHER_SITE("O-103", "Train {0} stands at another site. Plan one outage a site."),
  CLOSED("O-104", "{0} is closed; its record stays as it is. Plan another outage."),
  NOT_NEXT("O-105", "{0} is {1} and can''t become {2} now. Look at it again."),
  NO_SUCH("O-106", "There is no outage {0}."),
  NOT_IN_TRAINS("O-107", "{0} is no loop in use on the trains of {1}. Add its train first."),
  NO_WORK("O-108", "Choose at least one kind of work."),
  NO_LOOP("O-109", "Choose at least one loop."),
  NO_STEPS("O-110", "Give at least one step; a line is a step."),
  NO_SCOPE("O-111", "{0} has no loop in its scope. Take loops in first."),
  STEPS_CHANGED(
      "O-112", "Somebody changed these steps meanwhile. Look at them and send yours again."),
  SAME("O-113", "{0} is planned just so already. Open that one, or give this one another name."),
  NOT_UNDER_WAY(
      "O-114",
      "{0} is {1}. Emergent work is added while an outage is under way; otherwise take the loop into"
          + " the scope and issue a new revision."),
  IS_EMERGENT(
      "O-115",
      "{0} is under way: what is added now is emergent work. Add it on its work pack, with who found"
          + " it and when.");

  private final String code;
  private final String sentence;

  OutageProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence.replace("''", "'");
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
