package loopwright.stock;

import loopwright.problem.Problem;

/** Why a minimum was not set. */
enum StockProblem implements Problem {
  NOT_COUNTED(
      "S-101", "Minimum stock is kept of probes, extension cables and drivers, not of {0}s."),
  NOT_OFFERED(
      "S-102", "Family {0} offers no {1} of {2}. It offers {3}. Choose one of these lengths."),
  NO_COUNT("S-103", "\u201c{0}\u201d is no number of parts. Give a whole number from 0 to 9999."),
  MOVED_ON(
      "S-104",
      "Somebody else decided about this sort meanwhile. Look at what stands now, then decide again.");

  private final String code;
  private final String sentence;

  StockProblem(String code, String sentence) {
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
