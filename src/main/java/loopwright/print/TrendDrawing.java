package loopwright.print;

import java.util.List;
import java.util.stream.DoubleStream;
import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;

/** A {@link TrendPicture} as SVG, small enough for a phone; the newest reading is at the right. */
public final class TrendDrawing {
  private static final int WIDTH = 340;
  private static final int LEFT = 44;
  private static final int RIGHT = 326;
  private static final int TOP = 24;
  private static final int BOTTOM = 164;
  private static final int KEY = 18;
  private static final List<String> DASHES = List.of("", "6 3", "2 3");

  private TrendDrawing() {}

  public static String svg(TrendPicture picture) {
    int height = BOTTOM + 34 + KEY * picture.lines().size();
    Svg.Element root = Svg.drawing(WIDTH, height, picture.label()).set("class", "level");
    double[] days = all(picture, true);
    double[] volts = all(picture, false);
    double last = DoubleStream.of(days).max().orElseThrow();
    double first = DoubleStream.of(days).min().orElseThrow();
    Scale across = new Scale(Math.min(first - last, -1), 0, LEFT, RIGHT);
    Scale up =
        Scale.around(
            DoubleStream.of(volts).min().orElseThrow(),
            DoubleStream.of(volts).max().orElseThrow(),
            0.1,
            BOTTOM,
            TOP);
    Panel panel = new Panel(root, across, up, LEFT, RIGHT, TOP, BOTTOM);
    panel.gapTicks(across.ticks(4));
    panel.valueTicks(up.ticks(4));
    panel.frame("Gap voltage, V", "over days before the newest");
    across
        .ticks(4)
        .forEach(
            tick ->
                root.label(across.at(tick.doubleValue()), BOTTOM + 14, "middle", Panel.text(tick))
                    .set("class", "n soft")
                    .set("font-size", "11"));
    for (int i = 0; i < picture.lines().size(); i++) {
      line(root, panel, picture.lines().get(i), last, i);
    }
    return root.toString();
  }

  private static double[] all(TrendPicture picture, boolean days) {
    return picture.lines().stream()
        .flatMapToDouble(line -> DoubleStream.of(days ? line.days() : line.volts()))
        .toArray();
  }

  private static void line(
      Svg.Element root, Panel panel, TrendPicture.Line line, double last, int i) {
    StringBuilder d = new StringBuilder();
    Look look = i == 0 ? Look.FIRST : Look.SECOND;
    for (int k = 0; k < line.days().length; k++) {
      double x = panel.x(line.days()[k] - last);
      double y = panel.y(line.volts()[k]);
      d.append(k == 0 ? "M" : " L").append(Marks.xy(x, y));
    }
    path(root, d.toString(), i);
    for (int k = 0; k < line.days().length; k++) {
      Marks.draw(
          root, look, Standing.WITHIN, panel.x(line.days()[k] - last), panel.y(line.volts()[k]));
    }
    double y = BOTTOM + 34 + KEY * (double) i;
    path(root, "M" + Marks.xy(LEFT, y - 4) + " L" + Marks.xy(LEFT + 26, y - 4), i);
    Marks.draw(root, look, Standing.WITHIN, LEFT + 13, y - 4);
    root.label(LEFT + 34, y, "start", line.name())
        .set("class", "plot-key soft")
        .set("font-size", "12");
  }

  private static void path(Svg.Element root, String d, int i) {
    Svg.Element path =
        root.add("path")
            .set("class", "plot-curve")
            .set("d", d)
            .set("fill", "none")
            .set("stroke", "#1c2733")
            .set("stroke-width", 1.4);
    String dashes = DASHES.get(i % DASHES.size());
    if (!dashes.isEmpty()) {
      path.set("stroke-dasharray", dashes);
    }
  }
}
