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

  void mark(Look look, Standing standing, String meaning) {
    Marks.draw(into, look, standing, x + Marks.SIZE, y - 4);
    into.label(x + 14, y, "start", meaning).set("class", "plot-key soft").set("font-size", "12");
    x += 14 + LETTER * meaning.length() + 18;
  }
}
