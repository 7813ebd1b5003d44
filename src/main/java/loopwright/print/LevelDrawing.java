package loopwright.print;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.stream.DoubleStream;
import loopwright.print.LevelPicture.Row;
import org.jspecify.annotations.Nullable;

/**
 * A {@link LevelPicture} as SVG, small enough for a phone: a circle where a set point was meant to
 * act, a diamond where it does, an arrow from one to the other. Told apart by shape, not colour.
 */
public final class LevelDrawing {
  private static final int WIDTH = 340;
  private static final int LEFT = 70;
  private static final int RIGHT = 318;
  private static final int TOP = 14;
  private static final int ROW = 40;
  private static final int UNDER = 50;
  private static final double ARROW_ROOM = 8;

  private final LevelPicture picture;
  private final Svg.Element root;
  private final Scale axis;
  private final int bottom;

  private LevelDrawing(LevelPicture picture) {
    this.picture = picture;
    this.bottom = TOP + ROW * picture.rows().size();
    this.root = Svg.drawing(WIDTH, bottom + UNDER, picture.label()).set("class", "level");
    this.axis = axis(picture);
  }

  public static String svg(LevelPicture picture) {
    return new LevelDrawing(picture).drawn().toString();
  }

  /** From zero, or over both sides of it, with some room. */
  private static Scale axis(LevelPicture picture) {
    double[] shown =
        picture.rows().stream()
            .flatMapToDouble(
                row ->
                    row.acts() == null
                        ? DoubleStream.of(row.meant())
                        : DoubleStream.of(row.meant(), row.acts()))
            .toArray();
    double most = Math.max(0, DoubleStream.of(shown).max().orElse(0));
    double least = Math.min(0, DoubleStream.of(shown).min().orElse(0));
    double room = 0.1 * (most - least);
    return new Scale(least < 0 ? least - room : 0, most > 0 ? most + room : room, LEFT, RIGHT);
  }

  private Svg.Element drawn() {
    grid();
    clip();
    for (int i = 0; i < picture.rows().size(); i++) {
      row(picture.rows().get(i), TOP + ROW * i + ROW / 2.0);
    }
    key();
    return root;
  }

  private void grid() {
    for (BigDecimal tick : axis.ticks(4)) {
      double x = axis.at(tick.doubleValue());
      root.line(x, TOP, x, bottom).set("class", "plot-grid").set("stroke", "#e9e5d8");
      root.label(x, bottom + 13, "middle", Panel.text(tick))
          .set("class", "n soft")
          .set("font-size", "11");
    }
    root.line(LEFT, bottom, RIGHT, bottom).set("class", "plot-frame").set("stroke", "#867f6c");
    root.label(LEFT - 8, bottom + 13, "end", picture.unit())
        .set("class", "n soft")
        .set("font-size", "11");
  }

  /** Where the signal clips, if that lies on the axis. */
  private void clip() {
    @Nullable Double clips = picture.clipsAt();
    if (clips == null || !axis.shows(clips) || clips <= 0) {
      return;
    }
    double x = axis.at(clips);
    root.line(x, TOP, x, bottom)
        .set("class", "plot-step outside")
        .set("stroke", "#a3271c")
        .set("stroke-width", 1.4)
        .set("stroke-dasharray", "5 3");
    root.label(x - 3, TOP + 2, "end", "clips").set("class", "soft").set("font-size", "11");
  }

  private void row(Row row, double y) {
    root.label(LEFT - 8, y + 4, "end", row.name()).set("font-size", "12.5");
    double meant = axis.at(row.meant());
    @Nullable Double acts = row.acts();
    if (acts == null) {
      root.label(meant, y - 8, "middle", "meant; not reached")
          .set("class", "soft")
          .set("font-size", "11");
    } else {
      double at = axis.at(acts);
      arrow(meant, at, y);
      boolean same = Math.abs(at - meant) < 1;
      Marks.draw(
          root,
          CurvePicture.Look.SECOND,
          same ? CurvePicture.Standing.WITHIN : CurvePicture.Standing.OUTSIDE,
          at,
          y);
      root.label(at, y + 17, "middle", number(acts)).set("class", "n").set("font-size", "11");
      root.label(meant, y - 8, "middle", number(row.meant()))
          .set("class", "n soft")
          .set("font-size", "11");
    }
    Marks.draw(root, CurvePicture.Look.FIRST, CurvePicture.Standing.WITHIN, meant, y);
  }

  private void arrow(double from, double to, double y) {
    if (Math.abs(to - from) < 2 * ARROW_ROOM) {
      return;
    }
    double sign = Math.signum(to - from);
    double tip = to - sign * ARROW_ROOM;
    Svg.Element arrow = root.group("plot-curve").set("stroke", "#1c2733").set("fill", "none");
    arrow.line(from + sign * ARROW_ROOM, y, tip, y);
    arrow.line(tip - sign * 5, y - 3, tip, y);
    arrow.line(tip - sign * 5, y + 3, tip, y);
  }

  private void key() {
    Key key = new Key(root, LEFT - 62, bottom + UNDER - 12);
    key.mark(CurvePicture.Look.FIRST, CurvePicture.Standing.WITHIN, "meant to act");
    key.mark(CurvePicture.Look.SECOND, CurvePicture.Standing.OUTSIDE, "acts");
  }

  private static String number(double value) {
    String pattern = Math.abs(value) < 20 ? "%.1f" : "%.0f";
    return String.format(Locale.ROOT, pattern, value).replace('-', '\u2212');
  }
}
