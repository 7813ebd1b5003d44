package loopwright.pack;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import loopwright.curve.Grid;
import loopwright.curve.ToleranceProfile;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** Quantities as a sheet prints them: both units, few digits, always with a decimal point. */
final class Quantities {
  private static final double MIL = 25.4;

  private Quantities() {}

  /** A gap as declared, with the other unit behind it; empty when there is none. */
  static String gap(@Nullable Reported gap) {
    return gap == null
        ? ""
        : gap.typed() + " " + gap.unit().symbol() + " (" + other(gap.amount(), gap.unit()) + ")";
  }

  /** A gap in µm for one in mil, and the other way round. */
  static String other(BigDecimal gap, Unit unit) {
    Unit other = unit == Unit.MIL ? Unit.MICROMETRE : Unit.MIL;
    BigDecimal amount = other.fromCanonical(unit.toCanonical(gap));
    return Numbers.plain(amount.setScale(other == Unit.MIL ? 2 : 0, RoundingMode.HALF_UP))
        + " "
        + other.symbol();
  }

  /** V with two decimals; empty for none. */
  static String volts(OptionalDouble volts) {
    return volts.isPresent() ? decimals(volts.getAsDouble(), 2) : "";
  }

  /** Limits in mV/µm, with mV/mil behind them. */
  static String scaleFactors(double lowest, double highest) {
    return "%s to %s mV/µm (%s to %s mV/mil)"
        .formatted(
            decimals(lowest, 3),
            decimals(highest, 3),
            decimals(lowest * MIL, 1),
            decimals(highest * MIL, 1));
  }

  /** By how much a reading differs from the one before when ISF conforms. */
  static String steps(ToleranceProfile profile, Grid grid) {
    double step = grid.stepMicrometres() / 1000;
    return "%s to %s V"
        .formatted(
            decimals(profile.isfLowest() * step, 3), decimals(profile.isfHighest() * step, 3));
  }

  static String decimals(double value, int places) {
    return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
  }
}
