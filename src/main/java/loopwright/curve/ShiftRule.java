package loopwright.curve;

import java.util.Arrays;

/** How the line of the profile's slope is shifted in voltage to fit a curve best. */
public enum ShiftRule {
  /** So that the largest deviation is least: halfway between the two extremes. */
  MINIMAX("least largest deviation") {
    @Override
    public double shift(double[] residuals) {
      double least = Arrays.stream(residuals).min().orElseThrow();
      double most = Arrays.stream(residuals).max().orElseThrow();
      return least + (most - least) / 2;
    }
  },
  /** So that the deviations add up to zero. */
  MEAN("mean deviation zero") {
    @Override
    public double shift(double[] residuals) {
      return Arrays.stream(residuals).average().orElseThrow();
    }
  };

  private final String label;

  ShiftRule(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  /** Where among the residuals the line lies, in their unit. */
  public abstract double shift(double[] residuals);
}
