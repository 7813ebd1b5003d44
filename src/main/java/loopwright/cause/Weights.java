package loopwright.cause;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.units.Numbers;

/**
 * Weights of the causes before anything was measured, for whatever place numbers are taken at. Only
 * their ratios count.
 *
 * @param byCause of each cause; loading as at the driver, the monitor's scale as at the monitor
 * @param origin who set them and when, or that they are built in; in words
 */
public record Weights(Map<Cause, BigDecimal> byCause, String origin) {
  private static final BigDecimal LARGEST = new BigDecimal(1000);
  private static final int DECIMALS = 6;

  /** Refuses a missing or negative weight. */
  public Weights {
    for (Cause cause : Cause.values()) {
      BigDecimal weight = byCause.get(cause);
      if (weight == null || weight.signum() < 0) {
        throw new IllegalArgumentException("Each cause has a weight of zero or more: " + cause);
      }
    }
    byCause = Map.copyOf(byCause);
  }

  /** Common practice, no source. */
  public static Weights builtIn() {
    Map<Cause, BigDecimal> usual = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      usual.put(cause, BigDecimal.valueOf(cause.usualPrior()));
    }
    return new Weights(usual, "built in; " + Priors.COMMON);
  }

  /** A cause's weight. */
  public BigDecimal of(Cause cause) {
    return Optional.ofNullable(byCause.get(cause)).orElse(BigDecimal.ZERO);
  }

  /**
   * For numbers taken at that place: nothing behind the driver can load it there, and only a
   * monitor's reading depends on its setting.
   */
  public Priors at(TappingPoint place) {
    Map<Cause, Double> weights = new EnumMap<>(Cause.class);
    byCause.forEach((cause, weight) -> weights.put(cause, weight.doubleValue()));
    weights.computeIfPresent(
        Cause.LOADING, (cause, weight) -> weight * place.loadingPrior() / cause.usualPrior());
    if (place != TappingPoint.MONITOR) {
      weights.put(Cause.MONITOR_SCALE, 0.0);
    }
    return new Priors(weights, origin);
  }

  /** Whether every weight is the same, whoever set it. */
  public boolean isSameAs(Weights other) {
    return byCause.entrySet().stream()
        .allMatch(each -> other.of(each.getKey()).compareTo(each.getValue()) == 0);
  }

  /** Whether no cause of a number taken at the driver has a weight. */
  public boolean isEmptyAtTheDriver() {
    return byCause.entrySet().stream()
        .allMatch(each -> each.getKey() == Cause.MONITOR_SCALE || each.getValue().signum() == 0);
  }

  /**
   * A weight as a person typed it.
   *
   * @param cause that it is of, for the complaint
   */
  public static BigDecimal read(Cause cause, String text) {
    String name = "Weight of " + cause.label();
    BigDecimal weight =
        Numbers.read(text)
            .orElseThrow(
                () ->
                    new Refused(
                        CauseProblem.NOT_A_NUMBER,
                        name,
                        text.strip(),
                        "a weight of zero or more, for instance 0.05"));
    if (weight.signum() < 0
        || weight.compareTo(LARGEST) > 0
        || weight.stripTrailingZeros().scale() > DECIMALS) {
      throw new Refused(
          CauseProblem.IMPOSSIBLE_WEIGHT, name, text.strip(), LARGEST.toPlainString(), DECIMALS);
    }
    return weight;
  }
}
