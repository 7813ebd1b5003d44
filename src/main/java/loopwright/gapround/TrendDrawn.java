package loopwright.gapround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loopwright.fieldcheck.GapReading;
import loopwright.fieldcheck.MachineState;
import loopwright.print.TrendDrawing;
import loopwright.print.TrendPicture;

/** The voltages of a loop over time, a line for each machine state. */
final class TrendDrawn {
  private static final double DAY = 86_400;

  private TrendDrawn() {}

  /** As SVG; empty with fewer than two readings of one state. */
  static String of(List<GapReading> all) {
    List<TrendPicture.Line> lines = new ArrayList<>();
    for (MachineState state : MachineState.values()) {
      List<GapReading> some =
          all.stream()
              .filter(reading -> reading.state() == state)
              .sorted(Comparator.comparing(GapReading::readAt))
              .toList();
      if (some.size() > 1) {
        lines.add(
            new TrendPicture.Line(
                state.label(),
                some.stream().mapToDouble(r -> r.readAt().getEpochSecond() / DAY).toArray(),
                some.stream().mapToDouble(r -> r.volts().canonical()).toArray()));
      }
    }
    if (lines.isEmpty()) {
      return "";
    }
    int readings = lines.stream().mapToInt(line -> line.volts().length).sum();
    return TrendDrawing.svg(
        new TrendPicture("Gap voltage over time, " + readings + " readings.", lines));
  }
}
