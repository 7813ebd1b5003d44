package loopwright.curve;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/** Synthetic curves for tests. */
final class Curves {
  static final ToleranceProfile API = BuiltInProfiles.named("api670-2mm").orElseThrow();
  static final double MIL = 25.4;

  private Curves() {}

  /** On the inch grid, 10 to 90 mil. */
  static Curve inchGrid(double... volts) {
    return new Curve(inchRun(Run.UP, volts));
  }

  static List<CurveReading> inchRun(Run run, double... volts) {
    return IntStream.range(0, volts.length)
        .mapToObj(i -> typed(run, String.valueOf(10 * (i + 1)), Unit.MIL, volts[i]))
        .toList();
  }

  static CurveReading typed(Run run, String gap, Unit unit, double volts) {
    return CurveReading.of(
        run,
        Reported.read(gap, unit).orElseThrow(),
        Reported.read(BigDecimal.valueOf(volts).toPlainString(), Unit.VOLT).orElseThrow());
  }

  /** Gap in µm and volts in turn. */
  static Curve metric(double... gapsAndVolts) {
    List<CurveReading> readings = new ArrayList<>();
    for (int i = 0; i < gapsAndVolts.length; i += 2) {
      readings.add(CurveReading.of(Run.UP, gapsAndVolts[i], gapsAndVolts[i + 1]));
    }
    return new Curve(readings);
  }

  /** The ideal line at those gaps in µm: 200 mV/mil through zero. */
  static Curve ideal(double... gapsMicrometres) {
    List<CurveReading> readings = new ArrayList<>();
    for (double gap : gapsMicrometres) {
      readings.add(CurveReading.of(Run.UP, gap, -gap * 0.2 / MIL));
    }
    return new Curve(readings);
  }

  static double[] steps(double from, double to, double step) {
    int count = (int) Math.round((to - from) / step) + 1;
    return IntStream.range(0, count).mapToDouble(i -> from + i * step).toArray();
  }

  static ToleranceProfile withRule(ShiftRule rule) {
    return profile(API.nominal(), rule, API.grids());
  }

  static ToleranceProfile profile(ScaleFactor nominal, ShiftRule rule, List<Grid> grids) {
    return new ToleranceProfile(
        "test",
        "test",
        1,
        "test",
        "",
        nominal,
        API.isfTolerancePercent(),
        API.dslLimit(),
        rule,
        grids);
  }
}
