package loopwright.cause;

import java.util.EnumMap;
import java.util.Map;

/**
 * How likely each cause is before anything was measured, as relative weights. Common practice, no
 * source; a shop may set its own.
 */
public record Priors(Map<Cause, Double> weights) {

  /** Refuses a missing or negative weight. */
  public Priors {
    for (Cause cause : Cause.values()) {
      if (!(weights.getOrDefault(cause, -1.0) >= 0)) {
        throw new IllegalArgumentException("Each cause has a weight of zero or more: " + cause);
      }
    }
    weights = Map.copyOf(weights);
  }

  /**
   * The usual ones for numbers taken at that place: nothing behind the driver can load it there,
   * and only a monitor's reading depends on its setting.
   */
  public static Priors usual(TappingPoint at) {
    Map<Cause, Double> weights = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      weights.put(cause, cause.usualPrior());
    }
    weights.put(Cause.LOADING, at.loadingPrior());
    weights.put(Cause.MONITOR_SCALE, at == TappingPoint.MONITOR ? 0.03 : 0);
    return new Priors(weights);
  }

  /** The same with one weight changed. */
  public Priors with(Cause cause, double weight) {
    Map<Cause, Double> changed = new EnumMap<>(weights);
    changed.put(cause, weight);
    return new Priors(changed);
  }

  double of(Cause cause) {
    return weights.getOrDefault(cause, 0.0);
  }
}
