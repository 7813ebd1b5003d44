package loopwright.print;

import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;

/** The row under a drawing that says what its marks mean. */
final class Key {
  private static final double LETTER = 6;

  private final Svg.Element into;
  private final double y;
  private double x;

  Key(Svg.Element into, double x, double y) {
    this.into = into;
    this.x = x;
    this.y = y;
  }

  /** A line without marks. */
  void stroke(StackPicture.Stroke stroke, String meaning) {
    boolean fit = stroke == StackPicture.Stroke.LINE;
    Svg.Element line =
        into.line(x, y - 4, x + 22, y - 4)
            .set("class", fit ? "plot-line" : "plot-curve")
            .set("stroke", fit ? "#1f5a8a" : "#1c2733")
            .set("stroke-width", 1.5);
    if (stroke != StackPicture.Stroke.FULL) {
      line.set("stroke-dasharray", fit ? "10 3 2 3" : "5 3");
    }
    into.label(x + 28, y, "start", meaning).set("class", "plot-key soft").set("font-size", "12");
    x += 28 + LETTER * meaning.length() + 18;
  }

  void mark(Look look, Standing standing, String meaning) {
    Marks.draw(into, look, standing, x + Marks.SIZE, y - 4);
    into.label(x + 14, y, "start", meaning).set("class", "plot-key soft").set("font-size", "12");
    x += 14 + LETTER * meaning.length() + 18;
  }
}
