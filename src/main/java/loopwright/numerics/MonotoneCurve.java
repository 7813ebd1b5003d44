package loopwright.numerics;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A smooth curve through points that only rise or only fall, itself never turning between them;
 * beyond the ends it runs straight on. Value and slope are continuous.
 *
 * <p>Piecewise cubic; slopes at the points are the weighted harmonic means of their neighbours'
 * chords, at the ends those of the outer chords. All values are in the units of the x and y given.
 *
 * @see "Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304 (from memory)"
 */
public final class MonotoneCurve {
  /** More than a double can tell apart. */
  private static final int HALVINGS = 60;

  private final double[] x;
  private final double[] y;
  private final double[] slopes;

  private MonotoneCurve(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    this.slopes = slopes(x, y);
  }

  /**
   * @param x strictly rising
   * @param y strictly rising or strictly falling
   * @throws IllegalArgumentException if the arrays differ in length, hold fewer than two points or
   *     a value that is not finite or beyond 1e100, or don't run as said
   */
  public static MonotoneCurve through(double[] x, double[] y) {
    if (x.length != y.length || x.length < 2) {
      throw new IllegalArgumentException("A curve goes through two points at least.");
    }
    if (!Arrays.stream(x).allMatch(MonotoneCurve::fits)
        || !Arrays.stream(y).allMatch(MonotoneCurve::fits)) {
      throw new IllegalArgumentException("A curve needs finite numbers, at most 1e100.");
    }
    double direction = Math.signum(y[1] - y[0]);
    for (int i = 1; i < x.length; i++) {
      if (!(x[i] > x[i - 1]) || !((y[i] - y[i - 1]) * direction > 0)) {
        throw new IllegalArgumentException("The points only rise or only fall.");
      }
    }
    return new MonotoneCurve(x.clone(), y.clone());
  }

  private static boolean fits(double value) {
    return Math.abs(value) <= 1e100;
  }

  private static double[] slopes(double[] x, double[] y) {
    int last = x.length - 1;
    double[] chords = new double[last];
    Arrays.setAll(chords, i -> (y[i + 1] - y[i]) / (x[i + 1] - x[i]));
    double[] slopes = new double[x.length];
    slopes[0] = chords[0];
    slopes[last] = chords[last - 1];
    for (int i = 1; i < last; i++) {
      double before = x[i] - x[i - 1];
      double after = x[i + 1] - x[i];
      double weightBefore = before + 2 * after;
      double weightAfter = 2 * before + after;
      slopes[i] =
          (weightBefore + weightAfter) / (weightBefore / chords[i - 1] + weightAfter / chords[i]);
    }
    return slopes;
  }

  /** The curve's y at that x. */
  public double at(double at) {
    int last = x.length - 1;
    if (at <= x[0]) {
      return y[0] + slopes[0] * (at - x[0]);
    }
    if (at >= x[last]) {
      return y[last] + slopes[last] * (at - x[last]);
    }
    int i = piece(at);
    double width = x[i + 1] - x[i];
    double t = (at - x[i]) / width;
    return y[i] * (1 + 2 * t) * (1 - t) * (1 - t)
        + width * slopes[i] * t * (1 - t) * (1 - t)
        + y[i + 1] * t * t * (3 - 2 * t)
        + width * slopes[i + 1] * t * t * (t - 1);
  }

  /** The x between the ends at which the curve has that y; empty where it never has. */
  public OptionalDouble whereIs(double value) {
    double direction = Math.signum(y[y.length - 1] - y[0]);
    double low = x[0];
    double high = x[x.length - 1];
    if (direction * (value - y[0]) < 0 || direction * (value - y[y.length - 1]) > 0) {
      return OptionalDouble.empty();
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (direction * (at(middle) - value) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return OptionalDouble.of((low + high) / 2);
  }

  /** The curve's slope at that x, y per x. */
  public double slopeAt(double at) {
    int last = x.length - 1;
    if (at <= x[0] || at >= x[last]) {
      return at <= x[0] ? slopes[0] : slopes[last];
    }
    int i = piece(at);
    double width = x[i + 1] - x[i];
    double t = (at - x[i]) / width;
    return 6 * t * (1 - t) * (y[i + 1] - y[i]) / width
        + slopes[i] * (1 - t) * (1 - 3 * t)
        + slopes[i + 1] * t * (3 * t - 2);
  }

  private int piece(double at) {
    int found = Arrays.binarySearch(x, at);
    return found >= 0 ? Math.min(found, x.length - 2) : -found - 2;
  }

  public double firstX() {
    return x[0];
  }

  public double lastX() {
    return x[x.length - 1];
  }
}
