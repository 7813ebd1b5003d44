package loopwright.calibration;

import java.util.Optional;
import loopwright.units.Reported;

/**
 * Under what a calibration was taken; each may be unknown.
 *
 * @param temperature at the probe
 * @param runOut of the calibration target, peak to peak
 * @param procedure by which it was taken, with its edition; empty if nobody wrote it down
 */
public record Conditions(
    Optional<Reported> temperature, Optional<Reported> runOut, String procedure) {
  public static final Conditions NOT_RECORDED =
      new Conditions(Optional.empty(), Optional.empty(), "");

  /** °C; NaN is never it. */
  public Optional<Double> celsius() {
    return temperature.map(Reported::canonical);
  }
}
