package loopwright.drift;

import java.util.OptionalDouble;
import java.util.function.Function;
import loopwright.calibration.Calibrated;
import loopwright.web.UnitsShown;

/** A figure of a curve that is followed over the years. */
enum Figure {
  ASF("Average scale factor", "mV/µm", "mV/mil", 25.4, 0.04, numbers -> numbers.asf()),
  DSL(
      "Largest deviation from the straight line",
      "µm",
      "mil",
      1 / 25.4,
      5,
      numbers -> numbers.maxDsl()),
  VOLTS("Output at mid-range", "V", "V", 1, 0.1, numbers -> numbers.midVolts());

  private final String name;
  private final String metric;
  private final String mil;
  private final double toMil;
  private final double least;
  private final Function<Calibrated.Numbers, OptionalDouble> value;

  Figure(
      String name,
      String metric,
      String mil,
      double toMil,
      double least,
      Function<Calibrated.Numbers, OptionalDouble> value) {
    this.name = name;
    this.metric = metric;
    this.mil = mil;
    this.toMil = toMil;
    this.least = least;
    this.value = value;
  }

  String title(UnitsShown units) {
    return name + ", " + (units.metric() ? metric : mil);
  }

  /** Less than this off its line is no outlier whatever the statistics say; own choice. */
  double least(UnitsShown units) {
    return units.metric() ? least : least * toMil;
  }

  OptionalDouble of(Calibrated calibrated, UnitsShown units) {
    OptionalDouble found = value.apply(calibrated.numbers());
    return units.metric() || found.isEmpty()
        ? found
        : OptionalDouble.of(found.getAsDouble() * toMil);
  }
}
