package loopwright.importing;

import java.util.Optional;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/** A scale factor in mV/µm or mV/mil, each in its own column. */
final class ScaleCells {
  private static final String PER_MICROMETRE = "scale_factor_mv_um";
  private static final String PER_MIL = "scale_factor_mv_mil";

  private ScaleCells() {}

  static Optional<ScaleFactor> read(RowCells row) {
    Optional<Reported> typed =
        row.quantity(
            PER_MICROMETRE, Unit.MILLIVOLT_PER_MICROMETRE, PER_MIL, Unit.MILLIVOLT_PER_MIL);
    return typed.flatMap(
        t -> row.attempt(heading(t.unit()), () -> new ScaleFactor(t.amount(), t.unit())));
  }

  static String heading(ScaleFactor scale) {
    return heading(scale.unit());
  }

  private static String heading(Unit unit) {
    return unit == Unit.MILLIVOLT_PER_MIL ? PER_MIL : PER_MICROMETRE;
  }
}
