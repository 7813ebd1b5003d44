package loopwright.dynamic;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How a frequency response may depart from that at the lowest frequency measured, in level and in
 * phase, by ranges of frequency. Where two ranges meet both count; where none is, nothing is asked.
 *
 * @param source the document, or that there is none
 * @param stretches one at least
 */
public record ResponseBand(String source, List<Stretch> stretches) {
  /** A limit is inclusive, as those of a curve are. */
  private static final double INCLUSIVE = 1e-9;

  public ResponseBand {
    stretches = List.copyOf(stretches);
    if (stretches.isEmpty()) {
      throw new IllegalArgumentException("A response band has a range of frequencies at least.");
    }
  }

  /**
   * A range of frequencies with its limits; a null one doesn't limit.
   *
   * @param from Hz
   * @param to Hz
   * @param lowDecibels amplitude ratio, dB
   * @param lowPhase degrees
   */
  public record Stretch(
      BigDecimal from,
      BigDecimal to,
      @Nullable BigDecimal lowDecibels,
      @Nullable BigDecimal highDecibels,
      @Nullable BigDecimal lowPhase,
      @Nullable BigDecimal highPhase) {

    /** Refuses what limits nothing or runs backwards. */
    public Stretch {
      if (from.signum() < 0 || from.compareTo(to) >= 0) {
        throw new IllegalArgumentException(
            "A range of frequencies runs upwards from zero or more.");
      }
      if (lowDecibels == null && highDecibels == null && lowPhase == null && highPhase == null) {
        throw new IllegalArgumentException("Give a limit of level or of phase.");
      }
      refuseCrossed("level", lowDecibels, highDecibels);
      refuseCrossed("phase", lowPhase, highPhase);
    }

    private static void refuseCrossed(
        String what, @Nullable BigDecimal low, @Nullable BigDecimal high) {
      if (low != null && high != null && low.compareTo(high) > 0) {
        throw new IllegalArgumentException(
            "The lower limit of the " + what + " lies above the upper one.");
      }
    }

    boolean holds(double hertz) {
      return hertz >= from.doubleValue() * (1 - INCLUSIVE)
          && hertz <= to.doubleValue() * (1 + INCLUSIVE);
    }
  }

  /** Limits at one frequency; infinite where there is none. */
  public record Allowed(double low, double high) {
    public boolean isLimit() {
      return low != Double.NEGATIVE_INFINITY || high != Double.POSITIVE_INFINITY;
    }

    /** How far a value lies outside; zero or less within. */
    public double beyond(double value) {
      return Math.max(low - value, value - high);
    }

    public boolean holds(double value) {
      return beyond(value) <= INCLUSIVE;
    }
  }

  /** Level allowed at that frequency, dB. */
  public Allowed level(double hertz) {
    return allowed(hertz, Stretch::lowDecibels, Stretch::highDecibels);
  }

  /** Phase allowed at that frequency, degrees. */
  public Allowed phase(double hertz) {
    return allowed(hertz, Stretch::lowPhase, Stretch::highPhase);
  }

  private Allowed allowed(
      double hertz,
      Function<Stretch, @Nullable BigDecimal> low,
      Function<Stretch, @Nullable BigDecimal> high) {
    return new Allowed(
        tightest(hertz, low, Math::max).orElse(Double.NEGATIVE_INFINITY),
        tightest(hertz, high, Math::min).orElse(Double.POSITIVE_INFINITY));
  }

  private OptionalDouble tightest(
      double hertz, Function<Stretch, @Nullable BigDecimal> limit, DoubleBinaryOperator tighter) {
    return at(hertz)
        .map(stretch -> Optional.ofNullable(limit.apply(stretch)))
        .flatMap(Optional::stream)
        .mapToDouble(BigDecimal::doubleValue)
        .reduce(tighter);
  }

  private Stream<Stretch> at(double hertz) {
    return stretches.stream().filter(stretch -> stretch.holds(hertz));
  }

  /** Whether it says anything at that frequency. */
  public boolean reaches(double hertz) {
    return at(hertz).findAny().isPresent();
  }
}
