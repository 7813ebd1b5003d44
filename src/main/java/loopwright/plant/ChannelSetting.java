package loopwright.plant;

import java.math.BigDecimal;
import java.time.Instant;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Dimension;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a monitor channel was told or found to be told, from a moment on. Levels count from zero and
 * are two-sided for positions; vibration uses the high side only.
 *
 * @param scaleReason why the scale factor is not the nominal one; empty if it is or nobody says
 * @param levelUnit of full scale, alert and danger
 * @param okVolts beyond them the monitor calls the loop not OK
 * @param zeroVolts gap voltage that stands for zero
 * @param authority number of the change authority that approved it; empty if none
 */
public record ChannelSetting(
    SettingBasis basis,
    Instant from,
    @Nullable ScaleFactor scaleFactor,
    String scaleReason,
    Limits fullScale,
    Limits alert,
    Limits danger,
    @Nullable Unit levelUnit,
    Delays delays,
    Limits okVolts,
    @Nullable BigDecimal zeroVolts,
    @Nullable Direction positive,
    String authority) {

  /** Seconds that a level must be passed before the monitor acts. */
  public record Delays(@Nullable BigDecimal alertSeconds, @Nullable BigDecimal dangerSeconds) {
    public static final Delays NOT_SAID = new Delays(null, null);

    /** Refuses a delay below zero. */
    public Delays {
      refuseAbsurd("The alert delay", alertSeconds);
      refuseAbsurd("The danger delay", dangerSeconds);
    }

    private static void refuseAbsurd(String what, @Nullable BigDecimal seconds) {
      Decimals.refuseMore(what, seconds, 2, 4);
      if (seconds != null && seconds.signum() < 0) {
        throw new Refused(PlantProblem.OUT_OF_RANGE, what, seconds, "0 seconds or more");
      }
    }
  }

  /** Refuses levels without their unit and numbers with more decimals than are kept. */
  public ChannelSetting {
    scaleReason = Text.kept("the reason for the scale factor", scaleReason, 400);
    authority = Text.kept("the change authority", authority, 60);
    if (levelUnit != null && levelUnit.dimension() != Dimension.GAP) {
      throw new Refused(PlantProblem.BAD_UNIT, levelUnit.symbol(), "a level", "µm or mil");
    }
    if (scaleFactor != null) {
      Decimals.refuseMore("The scale factor", scaleFactor.declared(), 6, 5);
    }
    fullScale.refuseMoreDecimals("Full scale", 7);
    alert.refuseMoreDecimals("Alert", 7);
    danger.refuseMoreDecimals("Danger", 7);
    okVolts.refuseMoreDecimals("An OK limit", 3);
    Decimals.refuseMore("The zero voltage", zeroVolts, 3, 3);
    boolean levels =
        !(fullScale.equals(Limits.NONE) && alert.equals(Limits.NONE) && danger.equals(Limits.NONE));
    if (levels && levelUnit == null) {
      throw new Refused(PlantProblem.SCALE_NEEDS_UNIT, "A level", "µm or mil");
    }
  }

  /** A setting of which only these are known. */
  public static ChannelSetting of(
      SettingBasis basis, Instant from, @Nullable ScaleFactor scaleFactor) {
    return new ChannelSetting(
        basis,
        from,
        scaleFactor,
        "",
        Limits.NONE,
        Limits.NONE,
        Limits.NONE,
        null,
        Delays.NOT_SAID,
        Limits.NONE,
        null,
        null,
        "");
  }
}
