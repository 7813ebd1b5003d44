package loopwright.print;

import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;

/**
 * Marks that differ in shape, so that they can be told apart on a black-and-white print: a circle
 * or a diamond for the run, crossed when outside a limit, small and filled when not judged.
 */
final class Marks {
  static final double SIZE = 4;
  private static final double SMALL = 2;
  private static final double CROSS = 3;

  private Marks() {}

  static void draw(Svg.Element parent, Look look, Standing standing, double x, double y) {
    if (standing == Standing.NOT_JUDGED) {
      shape(parent, look, x, y, SMALL).set("class", "plot-mark not-judged").set("fill", "#56626e");
      return;
    }
    boolean outside = standing == Standing.OUTSIDE;
    Svg.Element group = parent.group(outside ? "plot-mark outside" : "plot-mark within");
    group.set("stroke", outside ? "#a3271c" : "#1c2733").set("fill", "#fffefa");
    shape(group, look, x, y, SIZE).set("stroke-width", outside ? 1.8 : 1.4);
    if (outside) {
      group.line(x - CROSS, y - CROSS, x + CROSS, y + CROSS).set("stroke-width", 1.8);
      group.line(x - CROSS, y + CROSS, x + CROSS, y - CROSS).set("stroke-width", 1.8);
    }
  }

  /** A filled wedge at the edge of a plot that points to where the mark would be. */
  static void beyond(Svg.Element parent, Standing standing, double x, double y, int direction) {
    boolean judged = standing != Standing.NOT_JUDGED;
    double base = y - direction * 7;
    parent
        .add("path")
        .set("class", judged ? "plot-beyond" : "plot-beyond not-judged")
        .set("fill", judged ? "#a3271c" : "#56626e")
        .set("d", "M" + xy(x - 5, base) + " L" + xy(x + 5, base) + " L" + xy(x, y) + " Z");
  }

  private static Svg.Element shape(Svg.Element parent, Look look, double x, double y, double size) {
    if (look == Look.FIRST) {
      return parent.add("circle").set("cx", x).set("cy", y).set("r", size);
    }
    double reach = size * 1.25;
    return parent
        .add("path")
        .set(
            "d",
            "M"
                + xy(x, y - reach)
                + " L"
                + xy(x + reach, y)
                + " L"
                + xy(x, y + reach)
                + " L"
                + xy(x - reach, y)
                + " Z");
  }

  static String xy(double x, double y) {
    return Svg.number(x) + " " + Svg.number(y);
  }
}
