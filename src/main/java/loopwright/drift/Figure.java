package loopwright.drift;

import java.util.OptionalDouble;
import java.util.function.Function;
import loopwright.calibration.Calibrated;

/** A figure of a curve that is followed over the years. */
enum Figure {
  ASF("Average scale factor, mV/µm", numbers -> numbers.asf()),
  DSL("Largest deviation from the straight line, µm", numbers -> numbers.maxDsl()),
  VOLTS("Output at mid-range, V", numbers -> numbers.midVolts());

  private final String title;
  private final Function<Calibrated.Numbers, OptionalDouble> value;

  Figure(String title, Function<Calibrated.Numbers, OptionalDouble> value) {
    this.title = title;
    this.value = value;
  }

  String title() {
    return title;
  }

  OptionalDouble of(Calibrated calibrated) {
    return value.apply(calibrated.numbers());
  }
}
