package loopwright.trend;

import java.time.Instant;

/**
 * A figure as it was found.
 *
 * @param value in one unit, the same for all that are compared
 * @param segment what must be the same for values to be one line: the parts it was taken with
 * @param level how often those parts had been adjusted before: what is found is compared with what
 *     was last left, and an adjustment is no drift
 */
public record Observation(Instant at, double value, String segment, int level) {
  /** Of a Julian year, 365.25 days. */
  private static final double SECONDS = 31_557_600;

  /** Refuses what can't be drawn. */
  public Observation {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("An observation is a finite number.");
    }
  }

  /** Of parts that nobody adjusted. */
  public Observation(Instant at, double value, String segment) {
    this(at, value, segment, 0);
  }

  /** Julian years after 1970 began. */
  public double years() {
    return years(at);
  }

  public static double years(Instant at) {
    return at.getEpochSecond() / SECONDS;
  }

  /** The moment of {@link #years(Instant)}, to the second. */
  public static Instant at(double years) {
    return Instant.ofEpochSecond(Math.round(years * SECONDS));
  }
}
