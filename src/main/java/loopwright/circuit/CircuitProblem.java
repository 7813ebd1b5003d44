package loopwright.circuit;

import loopwright.problem.Problem;

/** Why a field circuit was not recorded. */
public enum CircuitProblem implements Problem {
  NOT_A_NUMBER("F-101", "“{0}” is not a number. Give {1}, such as {2}."),
  OUT_OF_RANGE("F-102", "{0} can't be {1}. Give {2}."),
  NO_SUCH_PART(
      "F-103",
      "No barrier or isolator in the register is called {0}. Check the serial, or add the part under"
          + " Parts first."),
  OTHER_KIND("F-104", "{0} is known as {1}, not as a barrier or isolator. Check the serial."),
  SEVERAL("F-105", "{0} barriers and isolators are called {1}. Give one of them a shop number."),
  NOTHING_NEW("F-106", "The field circuit is recorded exactly so already."),
  BARRIER_NEEDED("F-107", "Give the serial or shop number of the barrier or isolator."),
  NONE_WITH_SERIAL(
      "F-108",
      "You say that none is fitted, and give {0}. Take the serial out, or choose “this one”.");

  private final String code;
  private final String sentence;

  CircuitProblem(String code, String sentence) {
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
