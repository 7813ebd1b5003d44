package loopwright.fieldcheck;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.dynamic.FieldCable;
import loopwright.dynamic.FrequencyResponse;
import loopwright.dynamic.ResponseBand;
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

  private static final ResponseBand.Allowed NO_LIMIT =
      new ResponseBand.Allowed(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  private final FrequencyResponse response;
  private final Entries entries;
  private final Optional<ResponseBand> band;
  private final double from;
  private final double to;

  private ResponseDrawing(
      FrequencyResponse response, Entries entries, Optional<ResponseBand> band) {
    this.response = response;
    this.entries = entries;
    this.band = band;
    this.from = Math.log10(response.points().get(0).hertz());
    this.to = Math.log10(response.points().get(response.points().size() - 1).hertz());
  }

  /**
   * @param band of the profile that judged it
   */
  static Optional<String> svg(Entries entries, Optional<ResponseBand> band) {
    return Sines.response(entries)
        .map(response -> StackPlot.svg(new ResponseDrawing(response, entries, band).picture()));
  }

  private StackPicture picture() {
    List<Pane> panes = new ArrayList<>();
    panes.add(level());
    List<FrequencyResponse.Point> phased =
        response.points().stream().filter(point -> point.phaseDegrees().isPresent()).toList();
    if (!phased.isEmpty()) {
      panes.add(phase(phased));
    }
    return new StackPicture(
        "response",
        "Level and phase of the output against frequency.",
        "frequency, Hz",
        ticks(from, to),
        List.of(),
        panes);
  }

  private Pane level() {
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
                            allowedLevel(point.hertz()).holds(point.decibels())
                                ? Mark.PLAIN
                                : Mark.OUTSIDE))
                .toList()));
    DoubleSummaryStatistics drawn =
        response.points().stream()
            .mapToDouble(FrequencyResponse.Point::decibels)
            .summaryStatistics();
    return new Pane(
        "Level, dB",
        "from the lowest frequency",
        reaches(this::allowedLevel, drawn.getMin() - 1, drawn.getMax() + 1),
        trails);
  }

  /** By the profile's band, else by the one typed, else by the usual one. */
  private ResponseBand.Allowed allowedLevel(double hertz) {
    return band.map(b -> b.level(hertz))
        .orElseGet(
            () ->
                new ResponseBand.Allowed(ResponseJudge.low(entries), ResponseJudge.high(entries)));
  }

  private ResponseBand.Allowed allowedPhase(double hertz) {
    return band.map(b -> b.phase(hertz)).orElse(NO_LIMIT);
  }

  private Pane phase(List<FrequencyResponse.Point> phased) {
    boolean shifts = phased.stream().allMatch(point -> response.phaseShift(point).isPresent());
    List<Spot> spots =
        phased.stream()
            .map(
                point -> {
                  double value =
                      response.phaseShift(point).orElse(point.phaseDegrees().orElseThrow());
                  boolean within = !shifts || allowedPhase(point.hertz()).holds(value);
                  return new Spot(
                      Math.log10(point.hertz()), value, within ? Mark.PLAIN : Mark.OUTSIDE);
                })
            .toList();
    DoubleSummaryStatistics drawn = spots.stream().mapToDouble(Spot::y).summaryStatistics();
    return new Pane(
        "Phase, °",
        shifts ? "from that at the lowest frequency" : "as measured",
        shifts ? reaches(this::allowedPhase, drawn.getMin() - 10, drawn.getMax() + 10) : List.of(),
        List.of(new Trail("", Stroke.FULL, spots)));
  }

  /**
   * The allowed band along the axis, a piece a range of frequencies; where one side has no limit it
   * reaches as far as anything is drawn.
   */
  private List<List<Reach>> reaches(
      DoubleFunction<ResponseBand.Allowed> allowed, double least, double most) {
    List<List<Reach>> pieces = new ArrayList<>();
    List<Double> edges = edges();
    for (int i = 1; i < edges.size(); i++) {
      double left = edges.get(i - 1);
      double right = edges.get(i);
      ResponseBand.Allowed here = allowed.apply(Math.pow(10, (left + right) / 2));
      if (here.isLimit()) {
        double low = Math.max(here.low(), Math.min(least, here.high() - 1));
        double high = Math.min(here.high(), Math.max(most, here.low() + 1));
        pieces.add(List.of(new Reach(left, low, high), new Reach(right, low, high)));
      }
    }
    return pieces;
  }

  /** Where the band may change, as logarithms, within what is drawn. */
  private List<Double> edges() {
    TreeSet<Double> edges = new TreeSet<>(List.of(from, to));
    band.ifPresent(
        b ->
            b.stretches().stream()
                .flatMap(stretch -> Stream.of(stretch.from(), stretch.to()))
                .mapToDouble(BigDecimal::doubleValue)
                .filter(hertz -> hertz > 0)
                .map(Math::log10)
                .filter(x -> x > from && x < to)
                .forEach(edges::add));
    return List.copyOf(edges);
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
