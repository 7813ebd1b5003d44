package loopwright.plant;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * A low and a high limit, either of which may be unknown or not there.
 *
 * @param low for volts the more negative one
 */
public record Limits(@Nullable BigDecimal low, @Nullable BigDecimal high) {
  public static final Limits NONE = new Limits(null, null);

  /** Refuses a low limit that isn't below the high one. */
  public Limits {
    if (low != null && high != null && low.compareTo(high) >= 0) {
      throw new Refused(PlantProblem.LIMITS_CROSSED, "Limits", low, high);
    }
  }

  void refuseMoreDecimals(String what, int before) {
    Decimals.refuseMore(what, low, 3, before);
    Decimals.refuseMore(what, high, 3, before);
  }
}
