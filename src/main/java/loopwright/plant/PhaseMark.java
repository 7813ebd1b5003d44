package loopwright.plant;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * What a phase reference or speed point sees.
 *
 * @param eventsPerTurn marks or teeth in one turn
 * @param thresholdVolts level at which the monitor triggers
 */
public record PhaseMark(
    @Nullable Mark mark, @Nullable Integer eventsPerTurn, @Nullable BigDecimal thresholdVolts) {
  public static final PhaseMark NONE = new PhaseMark(null, null, null);

  /** Refuses less than one event a turn and a threshold that no driver gives. */
  public PhaseMark {
    Decimals.refuseMore("The threshold", thresholdVolts, 3, 3);
    if (eventsPerTurn != null && (eventsPerTurn < 1 || eventsPerTurn > 10_000)) {
      throw new Refused(PlantProblem.OUT_OF_RANGE, "Events per turn", eventsPerTurn, "1 to 10000");
    }
    if (thresholdVolts != null && thresholdVolts.abs().compareTo(BigDecimal.valueOf(100)) > 0) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE, "The threshold", thresholdVolts + " V", "volts, such as -8.5");
    }
  }
}
