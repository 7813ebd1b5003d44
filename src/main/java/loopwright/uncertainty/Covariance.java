package loopwright.uncertainty;

/**
 * Variances and covariances of a set of values, in the square of their unit.
 *
 * @param matrix symmetric, one row a value
 */
record Covariance(double[][] matrix) {

  /** Equal variances, no correlation. */
  static Covariance independent(double variance, int count) {
    double[][] matrix = new double[count][count];
    for (int i = 0; i < count; i++) {
      matrix[i][i] = variance;
    }
    return new Covariance(matrix);
  }

  /** One error that reaches each value by its own factor: fully correlated. */
  static Covariance common(double variance, double[] factors) {
    int count = factors.length;
    double[][] matrix = new double[count][count];
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < count; j++) {
        matrix[i][j] = variance * factors[i] * factors[j];
      }
    }
    return new Covariance(matrix);
  }

  /**
   * Variance of a result y = f(x₁ … xₙ): Σᵢ Σⱼ cᵢ cⱼ u(xᵢ, xⱼ), never below zero.
   *
   * @param sensitivities cᵢ = ∂f/∂xᵢ
   * @see "JCGM 100:2008, 5.2.2, equation (13)"
   */
  double ofResult(double[] sensitivities) {
    double sum = 0;
    for (int i = 0; i < sensitivities.length; i++) {
      for (int j = 0; j < sensitivities.length; j++) {
        sum += sensitivities[i] * sensitivities[j] * matrix[i][j];
      }
    }
    return Math.max(0, sum);
  }
}
