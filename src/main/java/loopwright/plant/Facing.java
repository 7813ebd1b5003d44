package loopwright.plant;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jspecify.annotations.Nullable;

/**
 * How a probe faces the shaft.
 *
 * @param angleDegrees from the vertical, positive against the clock
 * @param viewingEnd from which end that angle is seen; empty if not said
 * @param rampDegrees for differential expansion on a ramp: the gap changes by the sine of this
 *     angle times the movement
 */
public record Facing(
    @Nullable BigDecimal angleDegrees,
    String viewingEnd,
    @Nullable Rotation rotation,
    @Nullable BigDecimal rampDegrees) {
  public static final Facing NOT_SAID = new Facing(null, "", null, null);

  private static final BigDecimal TURN = BigDecimal.valueOf(360);
  private static final BigDecimal RIGHT_ANGLE = BigDecimal.valueOf(90);

  /** Refuses an angle beyond a turn and a ramp that isn't between 0 and 90°. */
  public Facing {
    viewingEnd = Text.kept("the viewing end", viewingEnd, 60);
    Decimals.refuseMore("The angle", angleDegrees, 2, 3);
    Decimals.refuseMore("The ramp angle", rampDegrees, 3, 2);
    if (angleDegrees != null && angleDegrees.abs().compareTo(TURN) > 0) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE, "The angle", angleDegrees + "°", "−360 to 360 degrees");
    }
    if (rampDegrees != null
        && (rampDegrees.signum() <= 0 || rampDegrees.compareTo(RIGHT_ANGLE) >= 0)) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE,
          "The ramp angle",
          rampDegrees + "°",
          "more than 0 and less than 90 degrees");
    }
  }
}
