package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import loopwright.dynamic.FieldCable;
import loopwright.dynamic.FrequencyResponse;
import loopwright.print.StackPicture;
import loopwright.print.StackPicture.Mark;
import loopwright.print.StackPicture.Pane;
import loopwright.print.StackPicture.Reach;
import loopwright.print.StackPicture.Spot;
import loopwright.print.StackPicture.Stroke;
import loopwright.print.StackPicture.Tick;
import loopwright.print.StackPicture.Trail;
import loopwright.print.StackPlot;

/** A frequency response: level with its band over phase, on a logarithmic axis of frequency. */
final class ResponseDrawing {
  private static final int STEPS = 40;

  private ResponseDrawing() {}

  static Optional<String> svg(Entries entries) {
    return Sines.response(entries).map(response -> StackPlot.svg(picture(response, entries)));
  }

  private static StackPicture picture(FrequencyResponse response, Entries entries) {
    List<FrequencyResponse.Point> points = response.points();
    double from = Math.log10(points.get(0).hertz());
    double to = Math.log10(points.get(points.size() - 1).hertz());
    List<Pane> panes = new ArrayList<>();
    panes.add(level(response, entries, from, to));
    List<Spot> phases =
        points.stream()
            .filter(point -> point.phaseDegrees().isPresent())
            .map(
                point ->
                    new Spot(
                        Math.log10(point.hertz()), point.phaseDegrees().getAsDouble(), Mark.PLAIN))
            .toList();
    if (!phases.isEmpty()) {
      panes.add(
          new Pane(
              "Phase, °", "as measured", List.of(), List.of(new Trail("", Stroke.FULL, phases))));
    }
    return new StackPicture(
        "response",
        "Level and phase of the output against frequency.",
        "frequency, Hz",
        ticks(from, to),
        List.of(),
        panes);
  }

  private static Pane level(FrequencyResponse response, Entries entries, double from, double to) {
    double low = ResponseJudge.low(entries);
    double high = ResponseJudge.high(entries);
    List<Trail> trails = new ArrayList<>();
    Sines.cable(entries)
        .ifPresent(
            cable ->
                trails.add(new Trail("field cable alone", Stroke.LINE, cable(cable, from, to))));
    trails.add(
        new Trail(
            "measured",
            Stroke.FULL,
            response.points().stream()
                .map(
                    point ->
                        new Spot(
                            Math.log10(point.hertz()),
                            point.decibels(),
                            point.decibels() < low || point.decibels() > high
                                ? Mark.OUTSIDE
                                : Mark.PLAIN))
                .toList()));
    return new Pane(
        "Level, dB",
        "from the lowest frequency",
        List.of(List.of(new Reach(from, low, high), new Reach(to, low, high))),
        trails);
  }

  private static List<Spot> cable(FieldCable cable, double from, double to) {
    return IntStream.rangeClosed(0, STEPS)
        .mapToDouble(i -> from + (to - from) * i / STEPS)
        .mapToObj(x -> Spot.of(x, cable.decibels(Math.pow(10, x))))
        .toList();
  }

  private static List<Tick> ticks(double from, double to) {
    List<Tick> ticks = new ArrayList<>();
    for (int power = (int) Math.floor(from); power <= Math.ceil(to); power++) {
      for (int step : new int[] {1, 2, 5}) {
        double hertz = step * Math.pow(10, power);
        ticks.add(new Tick(Math.log10(hertz), Amounts.number(power < 0 ? "%.2f" : "%.0f", hertz)));
      }
    }
    return ticks;
  }
}
