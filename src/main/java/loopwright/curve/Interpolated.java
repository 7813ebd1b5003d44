package loopwright.curve;

import java.util.List;
import java.util.OptionalDouble;

/** A run's voltage between its readings, on the straight line from one to the next. */
final class Interpolated {
  private Interpolated() {}

  /** Empty outside the readings: nothing is extrapolated. */
  static OptionalDouble volts(List<CurvePoint> byRisingGap, double gapMicrometres) {
    for (int i = 0; i < byRisingGap.size(); i++) {
      CurvePoint here = byRisingGap.get(i);
      if (here.gapMicrometres() == gapMicrometres) {
        return OptionalDouble.of(here.volts());
      }
      if (here.gapMicrometres() > gapMicrometres) {
        return i == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(between(byRisingGap.get(i - 1), here, gapMicrometres));
      }
    }
    return OptionalDouble.empty();
  }

  private static double between(CurvePoint before, CurvePoint after, double gap) {
    double share =
        (gap - before.gapMicrometres()) / (after.gapMicrometres() - before.gapMicrometres());
    return before.volts() + share * (after.volts() - before.volts());
  }
}
