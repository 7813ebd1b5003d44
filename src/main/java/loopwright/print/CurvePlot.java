package loopwright.print;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import loopwright.print.CurvePicture.Dot;
import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;
import loopwright.print.CurvePicture.Step;
import loopwright.print.CurvePicture.Trace;
import loopwright.units.Dimension;
import loopwright.units.Unit;

/**
 * Three plots of a curve stacked on one gap axis: the output with its straight line, the
 * incremental scale factor with its band, the deviation from the line with its band. Looks come
 * from the style classes {@code plot-…} of the page; without them it is drawn in ink on paper. What
 * matters can be read in black and white: full, broken and dotted lines, hatched bands, marks that
 * differ in shape.
 */
public final class CurvePlot {
  static final int WIDTH = 760;
  static final int HEIGHT = 600;
  private static final int LEFT = 58;
  private static final int RIGHT = WIDTH - 58;
  private static final int VOLTS_TOP = 26;
  private static final int VOLTS_BOTTOM = 230;
  private static final int ISF_TOP = 262;
  private static final int ISF_BOTTOM = 382;
  private static final int DEVIATION_TOP = 414;
  private static final int DEVIATION_BOTTOM = 534;

  /** How far the deviation axis reaches at most, in widths of its half band. */
  private static final double DEVIATION_REACH = 12;

  /** How far the ISF axis reaches at most, as a share of nominal: a dead loop shows its zero. */
  private static final double ISF_REACH = 1.05;

  /** Marks of two runs at one gap stand this far apart, in user units. */
  private static final double BESIDE = 5;

  private final CurvePicture picture;
  private final Unit gapUnit;
  private final Unit slopeUnit;
  private final Svg.Element root;
  private final Scale gaps;

  private CurvePlot(CurvePicture picture, Unit gapUnit) {
    this.picture = picture;
    this.gapUnit = gapUnit;
    this.slopeUnit = gapUnit == Unit.MIL ? Unit.MILLIVOLT_PER_MIL : Unit.MILLIVOLT_PER_MICROMETRE;
    this.root = Svg.drawing(WIDTH, HEIGHT, picture.label()).set("class", "plot");
    this.gaps = scale(dots().map(dot -> gap(dot.gapMicrometres())).toList(), 0.04, LEFT, RIGHT);
  }

  /**
   * The drawing.
   *
   * @param gapUnit µm or mil, for gaps, deviations and slopes
   */
  public static String svg(CurvePicture picture, Unit gapUnit) {
    if (gapUnit.dimension() != Dimension.GAP) {
      throw new IllegalArgumentException("A gap is shown in µm or mil.");
    }
    return new CurvePlot(picture, gapUnit).drawn();
  }

  private String drawn() {
    hatch(root, hatchId());
    volts();
    isf();
    deviation();
    gapAxis();
    key();
    return root.toString();
  }

  private Stream<Dot> dots() {
    return picture.traces().stream().flatMap(trace -> trace.dots().stream());
  }

  private double gap(double micrometres) {
    return gapUnit.fromCanonical(micrometres);
  }

  private double slope(double millivoltsPerMicrometre) {
    return slopeUnit.fromCanonical(millivoltsPerMicrometre);
  }

  private String hatchId() {
    return picture.id() + "-hatch";
  }

  /** The pattern that bands are filled with. */
  static void hatch(Svg.Element root, String id) {
    Svg.Element pattern =
        root.add("defs")
            .add("pattern")
            .set("id", id)
            .set("width", 8)
            .set("height", 8)
            .set("patternTransform", "rotate(45)")
            .set("patternUnits", "userSpaceOnUse");
    pattern.rect(0, 0, 8, 8).set("class", "plot-wash").set("fill", "#e0f1ec");
    pattern
        .line(0, 0, 0, 8)
        .set("class", "plot-hatch")
        .set("stroke", "#0d6b57")
        .set("stroke-width", 0.8)
        .set("stroke-opacity", 0.45);
  }

  private void volts() {
    CurvePicture.Line line = picture.line();
    List<Double> shown =
        Stream.concat(dots().map(Dot::volts), Stream.of(0.0, line.fromVolts(), line.toVolts()))
            .toList();
    Panel panel = panel(scale(shown, 0.03, VOLTS_BOTTOM, VOLTS_TOP), VOLTS_TOP, VOLTS_BOTTOM);
    panel.valueTicks(panel.values().ticks(6));
    panel.frame("Output, V", "line: " + picture.words().line());
    panel
        .into()
        .line(
            panel.x(gap(line.fromMicrometres())),
            panel.y(line.fromVolts()),
            panel.x(gap(line.toMicrometres())),
            panel.y(line.toVolts()))
        .set("class", "plot-line")
        .set("stroke", "#1f5a8a")
        .set("stroke-width", 1.4)
        .set("stroke-dasharray", "10 3 2 3");
    picture.traces().forEach(trace -> output(panel, trace));
  }

  private void output(Panel panel, Trace trace) {
    StringBuilder points = new StringBuilder();
    for (Dot dot : trace.dots()) {
      points
          .append(points.isEmpty() ? "" : " ")
          .append(Svg.number(panel.x(gap(dot.gapMicrometres()))))
          .append(',')
          .append(Svg.number(panel.y(dot.volts())));
    }
    Svg.Element curve =
        panel
            .into()
            .add("polyline")
            .set("class", "plot-curve")
            .set("fill", "none")
            .set("stroke", "#1c2733")
            .set("stroke-width", 1.6)
            .set("points", points.toString());
    broken(curve, trace.look());
    for (Dot dot : trace.dots()) {
      Standing standing =
          dot.standing() == Standing.NOT_JUDGED ? Standing.NOT_JUDGED : Standing.WITHIN;
      Marks.draw(
          panel.into(),
          trace.look(),
          standing,
          panel.x(gap(dot.gapMicrometres())),
          panel.y(dot.volts()));
    }
  }

  private static void broken(Svg.Element line, Look look) {
    if (look == Look.SECOND) {
      line.set("stroke-dasharray", "5 3");
    }
  }

  private void isf() {
    CurvePicture.Band band = in(picture.isfBand(), this::slope);
    List<Double> shown =
        picture.traces().stream()
            .flatMap(trace -> trace.steps().stream())
            .map(step -> slope(step.isf()))
            .toList();
    Panel panel =
        panel(
            bandScale(band, ISF_REACH * band.middle(), shown, ISF_BOTTOM, ISF_TOP),
            ISF_TOP,
            ISF_BOTTOM);
    panel.valueTicks(panel.values().ticks(5));
    panel.band(band, hatchId(), slopeUnit == Unit.MILLIVOLT_PER_MIL ? 1 : 3);
    panel.frame("ISF, " + slopeUnit.symbol(), picture.words().isf());
    for (Trace trace : picture.traces()) {
      trace.steps().forEach(step -> step(panel, trace.look(), step));
    }
  }

  private void step(Panel panel, Look look, Step step) {
    double from = panel.x(gap(step.fromMicrometres()));
    double to = panel.x(gap(step.toMicrometres()));
    double isf = slope(step.isf());
    double y = panel.y(isf);
    Svg.Element bar = panel.into().line(from, y, to, y);
    if (step.standing() == Standing.NOT_JUDGED) {
      bar.set("class", "plot-step not-judged")
          .set("stroke", "#56626e")
          .set("stroke-width", 1.2)
          .set("stroke-dasharray", "1.5 2.5");
      return;
    }
    boolean outside = step.standing() == Standing.OUTSIDE;
    bar.set("class", outside ? "plot-step outside" : "plot-step within")
        .set("stroke", outside ? "#a3271c" : "#1c2733")
        .set("stroke-width", outside ? 2.6 : 2);
    broken(bar, look);
    mark(panel, look, step.standing(), (from + to) / 2 + beside(look), isf);
  }

  /** At its place, or a wedge at the edge when the axis doesn't reach so far. */
  private static void mark(Panel panel, Look look, Standing standing, double x, double value) {
    double y = panel.y(value);
    if (panel.values().shows(value)) {
      Marks.draw(panel.into(), look, standing, x, y);
    } else {
      Marks.beyond(panel.into(), standing, x, y, value > panel.values().high() ? -1 : 1);
    }
  }

  private double beside(Look look) {
    if (picture.traces().size() < 2) {
      return 0;
    }
    return look == Look.FIRST ? -BESIDE : BESIDE;
  }

  private void deviation() {
    CurvePicture.Band band = in(picture.deviationBand(), this::gap);
    List<Double> shown = dots().map(dot -> gap(dot.deviationMicrometres())).toList();
    Panel panel =
        panel(
            bandScale(band, DEVIATION_REACH * band.high(), shown, DEVIATION_BOTTOM, DEVIATION_TOP),
            DEVIATION_TOP,
            DEVIATION_BOTTOM);
    panel.valueTicks(panel.values().ticks(5));
    panel.band(band, hatchId(), gapUnit == Unit.MIL ? 2 : 1);
    panel.frame("Deviation, " + gapUnit.symbol(), picture.words().deviation());
    double zero = panel.y(0);
    panel
        .into()
        .line(LEFT, zero, RIGHT, zero)
        .set("class", "plot-line")
        .set("stroke", "#1f5a8a")
        .set("stroke-width", 1.4)
        .set("stroke-dasharray", "10 3 2 3");
    for (Trace trace : picture.traces()) {
      trace.dots().forEach(dot -> stem(panel, trace.look(), zero, dot));
    }
  }

  private void stem(Panel panel, Look look, double zero, Dot dot) {
    double x = panel.x(gap(dot.gapMicrometres())) + beside(look);
    double deviation = gap(dot.deviationMicrometres());
    Svg.Element stem =
        panel
            .into()
            .line(x, zero, x, panel.y(deviation))
            .set("class", "plot-stem")
            .set("stroke", "#1c2733")
            .set("stroke-width", 1.2);
    broken(stem, look);
    mark(panel, look, dot.standing(), x, deviation);
  }

  private void gapAxis() {
    for (BigDecimal tick : gaps.ticks(10)) {
      double x = gaps.at(tick.doubleValue());
      root.line(x, DEVIATION_BOTTOM, x, DEVIATION_BOTTOM + 5)
          .set("class", "plot-tick")
          .set("stroke", "#867f6c");
      root.label(x, DEVIATION_BOTTOM + 18, "middle", Panel.text(tick))
          .set("class", "n soft")
          .set("font-size", "11");
    }
    String other = gapUnit == Unit.MIL ? "1 mil = 25.4 µm" : "25.4 µm = 1 mil";
    String note = picture.words().gap().isEmpty() ? "" : " · " + picture.words().gap();
    root.label(
            (LEFT + RIGHT) / 2.0,
            DEVIATION_BOTTOM + 35,
            "middle",
            "gap, " + gapUnit.symbol() + " (" + other + ")" + note)
        .set("class", "plot-gap-title")
        .set("font-size", "12");
  }

  /** What the marks mean: only those that occur. */
  private void key() {
    Key key = new Key(root, LEFT, HEIGHT - 6);
    for (Trace trace : picture.traces()) {
      key.mark(trace.look(), Standing.WITHIN, trace.name());
    }
    for (Trace trace : picture.traces()) {
      if (stands(trace, Standing.OUTSIDE)) {
        key.mark(trace.look(), Standing.OUTSIDE, "outside its limit");
      }
    }
    if (picture.traces().stream().anyMatch(trace -> stands(trace, Standing.NOT_JUDGED))) {
      key.mark(Look.FIRST, Standing.NOT_JUDGED, "drawn, not judged");
    }
  }

  private static boolean stands(Trace trace, Standing standing) {
    return trace.dots().stream().anyMatch(dot -> dot.standing() == standing)
        || trace.steps().stream().anyMatch(step -> step.standing() == standing);
  }

  private Panel panel(Scale values, int top, int bottom) {
    Panel panel = new Panel(root.group("plot-panel"), gaps, values, LEFT, RIGHT, top, bottom);
    panel.gapTicks(gaps.ticks(10));
    return panel;
  }

  private static Scale scale(List<Double> shown, double room, double atLow, double atHigh) {
    double least = shown.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double most = shown.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    return Scale.around(least, most, room, atLow, atHigh);
  }

  /** The band with some air, and the data as far as the axis may reach. */
  private static Scale bandScale(
      CurvePicture.Band band, double reach, List<Double> shown, double atLow, double atHigh) {
    double half = (band.high() - band.low()) / 2;
    double least = band.middle() - reach;
    double most = band.middle() + reach;
    double[] kept =
        DoubleStream.concat(
                shown.stream().mapToDouble(value -> Math.max(least, Math.min(most, value))),
                DoubleStream.of(band.low() - half / 2, band.high() + half / 2))
            .sorted()
            .toArray();
    return Scale.around(kept[0], kept[kept.length - 1], 0.08, atLow, atHigh);
  }

  private static CurvePicture.Band in(CurvePicture.Band band, ToDoubleFunction<Double> conversion) {
    return new CurvePicture.Band(
        conversion.applyAsDouble(band.low()),
        conversion.applyAsDouble(band.middle()),
        conversion.applyAsDouble(band.high()));
  }
}
