package loopwright.print;

import java.math.BigDecimal;
import java.util.stream.DoubleStream;

/**
 * An {@link OutlookPicture} as SVG, small enough for a phone: the present curve full, the expected
 * one broken, what it may vary washed.
 */
public final class OutlookDrawing {
  private static final int WIDTH = 340;
  private static final int HEIGHT = 290;
  private static final int LEFT = 44;
  private static final int RIGHT = 326;
  private static final int TOP = 24;
  private static final int BOTTOM = 226;

  private final OutlookPicture picture;
  private final Svg.Element root;
  private final Panel panel;

  private OutlookDrawing(OutlookPicture picture) {
    this.picture = picture;
    this.root = Svg.drawing(WIDTH, HEIGHT, picture.label()).set("class", "level");
    double[] gaps = picture.gaps();
    Scale across = new Scale(gaps[0], gaps[gaps.length - 1], LEFT, RIGHT);
    double[] shown =
        DoubleStream.concat(DoubleStream.of(picture.present()), DoubleStream.of(picture.expected()))
            .toArray();
    double least = DoubleStream.of(shown).min().orElseThrow();
    double most = DoubleStream.of(shown).max().orElseThrow();
    this.panel =
        new Panel(
            root, across, Scale.around(least, most, 0.06, BOTTOM, TOP), LEFT, RIGHT, TOP, BOTTOM);
  }

  public static String svg(OutlookPicture picture) {
    return new OutlookDrawing(picture).drawn().toString();
  }

  private Svg.Element drawn() {
    band();
    panel.gapTicks(panel.gaps().ticks(4));
    panel.valueTicks(panel.values().ticks(4));
    panel.frame("Output, V", "over the gap, " + picture.gapUnit());
    for (BigDecimal tick : panel.gaps().ticks(4)) {
      root.label(panel.x(tick.doubleValue()), BOTTOM + 14, "middle", Panel.text(tick))
          .set("class", "n soft")
          .set("font-size", "11");
    }
    setGap();
    path(picture.present(), "plot-curve", "#1c2733", "");
    path(picture.expected(), "plot-line", "#22547d", "6 3");
    key(BOTTOM + 34, "plot-curve", "#1c2733", "", "present");
    key(BOTTOM + 52, "plot-line", "#22547d", "6 3", "expected; washed: within 95 %");
    return root;
  }

  private void setGap() {
    double x = panel.x(picture.setGap());
    root.line(x, TOP, x, BOTTOM)
        .set("class", "plot-stem")
        .set("stroke", "#1c2733")
        .set("stroke-width", 0.8)
        .set("stroke-dasharray", "2 3");
    root.label(x + 4, BOTTOM - 6, "start", "set gap").set("class", "soft").set("font-size", "11");
  }

  private void path(double[] volts, String styleClass, String colour, String dashes) {
    StringBuilder d = new StringBuilder();
    for (int i = 0; i < volts.length; i++) {
      d.append(i == 0 ? "M" : " L").append(point(i, volts[i]));
    }
    Svg.Element path =
        root.add("path")
            .set("class", styleClass)
            .set("d", d.toString())
            .set("fill", "none")
            .set("stroke", colour)
            .set("stroke-width", 1.8);
    if (!dashes.isEmpty()) {
      path.set("stroke-dasharray", dashes);
    }
  }

  private void band() {
    StringBuilder d = new StringBuilder();
    int last = picture.gaps().length - 1;
    for (int i = 0; i <= last; i++) {
      d.append(i == 0 ? "M" : " L").append(point(i, picture.high()[i]));
    }
    for (int i = last; i >= 0; i--) {
      d.append(" L").append(point(i, picture.low()[i]));
    }
    root.add("path").set("class", "outlook-band").set("fill", "#dfe9f1").set("d", d + " Z");
  }

  private String point(int i, double volts) {
    return Marks.xy(panel.x(picture.gaps()[i]), panel.y(volts));
  }

  private void key(double y, String styleClass, String colour, String dashes, String meaning) {
    Svg.Element line =
        root.line(LEFT, y - 4, LEFT + 26, y - 4)
            .set("class", styleClass)
            .set("stroke", colour)
            .set("stroke-width", 1.8);
    if (!dashes.isEmpty()) {
      line.set("stroke-dasharray", dashes);
    }
    root.label(LEFT + 34, y, "start", meaning).set("class", "plot-key soft").set("font-size", "12");
  }
}
