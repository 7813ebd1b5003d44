package loopwright.cause;

import java.util.EnumMap;
import java.util.Map;

/**
 * How likely each cause is before anything was measured, as relative weights.
 *
 * @param origin where they come from, in words
 */
public record Priors(Map<Cause, Double> weights, String origin) {
  static final String COMMON = "common practice, no source";

  /** Refuses a missing or negative weight. */
  public Priors {
    for (Cause cause : Cause.values()) {
      if (!(weights.getOrDefault(cause, -1.0) >= 0)) {
        throw new IllegalArgumentException("Each cause has a weight of zero or more: " + cause);
      }
    }
    weights = Map.copyOf(weights);
  }

  /** The built-in ones for numbers taken at that place. */
  public static Priors usual(TappingPoint at) {
    return Weights.builtIn().at(at);
  }

  /** The same with one weight changed. */
  public Priors with(Cause cause, double weight) {
    Map<Cause, Double> changed = new EnumMap<>(weights);
    changed.put(cause, weight);
    return new Priors(changed, origin);
  }

  double of(Cause cause) {
    return weights.getOrDefault(cause, 0.0);
  }
}
