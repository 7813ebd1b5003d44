package loopwright.register;

import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * Where a family's curve is straight; null where it isn't said.
 *
 * @param fromMicrometres the nearest gap, µm
 * @param toMicrometres the farthest gap, µm
 */
public record LinearRange(@Nullable Double fromMicrometres, @Nullable Double toMicrometres) {
  public static final LinearRange NOT_SAID = new LinearRange(null, null);

  /** Refuses a range that doesn't rise or that no probe has. */
  public LinearRange {
    if (fromMicrometres != null && toMicrometres != null && fromMicrometres >= toMicrometres
        || isAbsurd(fromMicrometres)
        || isAbsurd(toMicrometres)) {
      throw new Refused(RegisterProblem.BAD_RANGE);
    }
  }

  private static boolean isAbsurd(@Nullable Double micrometres) {
    return micrometres != null && !(micrometres >= 0 && micrometres < 100_000);
  }
}
