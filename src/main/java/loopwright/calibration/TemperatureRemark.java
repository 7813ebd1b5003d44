package loopwright.calibration;

import java.util.Optional;
import loopwright.register.ToleranceProfiles;
import loopwright.units.Reported;

/** What is to be said when a curve was taken at a temperature that its profile is not for. */
final class TemperatureRemark {
  private TemperatureRemark() {}

  /** Empty when the profile says nothing of temperatures, or nobody wrote one down. */
  static Optional<String> of(Conditions conditions, ToleranceProfiles.Stored profile) {
    return conditions
        .temperature()
        .flatMap(
            taken ->
                profile
                    .terms()
                    .temperatures()
                    .filter(range -> !range.holds(taken.canonical()))
                    .map(range -> said(taken, range.inWords(), profile)));
  }

  private static String said(Reported taken, String range, ToleranceProfiles.Stored profile) {
    return "Taken at %s; the limits of %s hold at %s."
        .formatted(taken, profile.profile().code(), range);
  }
}
