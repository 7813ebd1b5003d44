package loopwright.print;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import loopwright.print.StackPicture.Cut;
import loopwright.print.StackPicture.Mark;
import loopwright.print.StackPicture.Pane;
import loopwright.print.StackPicture.Reach;
import loopwright.print.StackPicture.Spot;
import loopwright.print.StackPicture.Stroke;
import loopwright.print.StackPicture.Tick;
import loopwright.print.StackPicture.Trail;

/** Draws a {@link StackPicture} in the look of the curve's plots. */
public final class StackPlot {
  private static final int WIDTH = 760;
  private static final int LEFT = 62;
  private static final int RIGHT = WIDTH - 24;
  private static final int PANE = 170;
  private static final int TITLE = 34;
  private static final int FOOT = 66;

  private final StackPicture picture;
  private final Svg.Element root;
  private final Scale across;
  private final int height;

  private StackPlot(StackPicture picture) {
    this.picture = picture;
    this.height = picture.panes().size() * (PANE + TITLE) + FOOT;
    this.root = Svg.drawing(WIDTH, height, picture.label()).set("class", "plot");
    this.across = scale(xs(picture), 0.03, LEFT, RIGHT);
  }

  public static String svg(StackPicture picture) {
    return new StackPlot(picture).drawn();
  }

  private static DoubleStream xs(StackPicture picture) {
    return picture.panes().stream()
        .flatMap(
            pane ->
                Stream.concat(
                    pane.bands().stream().flatMap(List::stream).map(Reach::x),
                    pane.trails().stream().flatMap(t -> t.spots().stream()).map(Spot::x)))
        .mapToDouble(Double::doubleValue);
  }

  private static Scale scale(DoubleStream shown, double room, double atLow, double atHigh) {
    double[] sorted = shown.sorted().toArray();
    return sorted.length == 0
        ? Scale.around(0, 1, room, atLow, atHigh)
        : Scale.around(sorted[0], sorted[sorted.length - 1], room, atLow, atHigh);
  }

  private String drawn() {
    CurvePlot.hatch(root, hatchId());
    int top = TITLE;
    for (Pane pane : picture.panes()) {
      pane(pane, top, top + PANE);
      top += PANE + TITLE;
    }
    int bottom = top - TITLE;
    ticks(bottom);
    key();
    return root.toString();
  }

  private String hatchId() {
    return picture.id() + "-hatch";
  }

  private void pane(Pane pane, int top, int bottom) {
    DoubleStream values =
        DoubleStream.concat(
            pane.bands().stream()
                .flatMap(List::stream)
                .flatMapToDouble(r -> DoubleStream.of(r.low(), r.high())),
            pane.trails().stream().flatMap(t -> t.spots().stream()).mapToDouble(Spot::y));
    Scale scale = scale(values, 0.1, bottom, top);
    Panel panel = new Panel(root.group("plot-panel"), across, scale, LEFT, RIGHT, top, bottom);
    panel.valueTicks(scale.ticks(5));
    pane.bands().forEach(band -> band(panel, band));
    panel.frame(pane.title(), pane.words());
    picture.cuts().forEach(cut -> cut(panel, cut, top, bottom));
    pane.trails().forEach(trail -> trail(panel, trail));
  }

  private void band(Panel panel, List<Reach> band) {
    if (band.size() < 2) {
      return;
    }
    StringBuilder edge = new StringBuilder();
    band.forEach(reach -> corner(edge, panel, reach.x(), reach.high()));
    for (int i = band.size() - 1; i >= 0; i--) {
      corner(edge, panel, band.get(i).x(), band.get(i).low());
    }
    panel
        .into()
        .add("polygon")
        .set("class", "plot-band")
        .set("fill", "url(#" + hatchId() + ")")
        .set("points", edge.toString());
  }

  private static void corner(StringBuilder edge, Panel panel, double x, double y) {
    edge.append(edge.isEmpty() ? "" : " ")
        .append(Svg.number(panel.x(x)))
        .append(',')
        .append(Svg.number(panel.y(y)));
  }

  private void cut(Panel panel, Cut cut, int top, int bottom) {
    if (!across.shows(cut.x())) {
      return;
    }
    double x = panel.x(cut.x());
    panel
        .into()
        .line(x, top, x, bottom)
        .set("class", "plot-cut")
        .set("stroke", "#8a5a00")
        .set("stroke-width", 1.2)
        .set("stroke-dasharray", "2 3");
    boolean atRight = x > (LEFT + RIGHT) / 2.0;
    panel
        .into()
        .label(x + (atRight ? -4 : 4), top + 12, atRight ? "end" : "start", cut.text())
        .set("class", "soft")
        .set("font-size", "11");
  }

  private void trail(Panel panel, Trail trail) {
    if (trail.stroke() != Stroke.NONE && trail.spots().size() > 1) {
      StringBuilder points = new StringBuilder();
      trail.spots().forEach(spot -> corner(points, panel, spot.x(), spot.y()));
      boolean fit = trail.stroke() == Stroke.LINE;
      Svg.Element line =
          panel
              .into()
              .add("polyline")
              .set("class", fit ? "plot-line" : "plot-curve")
              .set("fill", "none")
              .set("stroke", fit ? "#1f5a8a" : "#1c2733")
              .set("stroke-width", 1.5)
              .set("points", points.toString());
      if (trail.stroke() != Stroke.FULL) {
        line.set("stroke-dasharray", fit ? "10 3 2 3" : "5 3");
      }
    }
    for (Spot spot : trail.spots()) {
      if (spot.mark() != Mark.NONE) {
        Marks.draw(
            panel.into(),
            spot.mark().look(),
            spot.mark().standing(),
            panel.x(spot.x()),
            panel.y(spot.y()));
      }
    }
  }

  private void ticks(int bottom) {
    for (Tick tick : picture.ticks()) {
      if (across.shows(tick.x())) {
        double x = across.at(tick.x());
        root.line(x, bottom, x, bottom + 5).set("class", "plot-tick").set("stroke", "#867f6c");
        root.label(x, bottom + 18, "middle", tick.text())
            .set("class", "n soft")
            .set("font-size", "11");
      }
    }
    root.label((LEFT + RIGHT) / 2.0, bottom + 36, "middle", picture.axis())
        .set("class", "plot-gap-title")
        .set("font-size", "12");
  }

  /** Names of the trails with their first mark; each once. */
  private void key() {
    Key key = new Key(root, LEFT, height - 6);
    picture.panes().stream()
        .flatMap(pane -> pane.trails().stream())
        .filter(trail -> !trail.name().isEmpty())
        .collect(Collectors.toMap(Trail::name, t -> t, (one, other) -> one, LinkedHashMap::new))
        .values()
        .forEach(trail -> entry(key, trail));
  }

  private static void entry(Key key, Trail trail) {
    trail.spots().stream()
        .map(Spot::mark)
        .filter(mark -> mark != Mark.NONE)
        .findFirst()
        .ifPresentOrElse(
            mark -> key.mark(mark.look(), mark.standing(), trail.name()),
            () -> key.stroke(trail.stroke(), trail.name()));
  }
}
