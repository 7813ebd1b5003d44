package loopwright.protection;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The gap that an OK limit stands for: the limit stays where it is in volts, the gap doesn't.
 *
 * @param volts of the limit
 * @param now gap, µm; empty beyond the curve's readings
 * @param before gap, µm, when the loop was right; empty where that isn't known
 */
public record OkGap(double volts, OptionalDouble now, OptionalDouble before) {
  static List<OkGap> of(List<Double> limits, OutputCurve now, Optional<OutputCurve> before) {
    return limits.stream()
        .map(
            volts ->
                new OkGap(
                    volts,
                    now.gapAt(volts),
                    before.map(curve -> curve.gapAt(volts)).orElse(OptionalDouble.empty())))
        .toList();
  }
}
