package loopwright.uncertainty;

/**
 * One component of a budget.
 *
 * @param name of the source
 * @param unit of the standard uncertainty
 * @param distribution of the error, and how it is spread over readings, in words
 * @param standardUncertainty u(x)
 * @param sensitivity |c|, result's unit per unit of x; where one uncertainty acts on several
 *     readings, the factor that their derivatives and correlations come to together
 * @param degreesOfFreedom of u(x), possibly infinite
 */
public record BudgetLine(
    String name,
    String unit,
    String distribution,
    double standardUncertainty,
    double sensitivity,
    double degreesOfFreedom) {

  /** |c| u(x), in the result's unit. */
  public double contribution() {
    return sensitivity * standardUncertainty;
  }
}
