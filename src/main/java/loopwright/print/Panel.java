package loopwright.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import loopwright.units.Numbers;

/** One of the stacked plots: its frame, its own upright axis, the gap axis it shares. */
record Panel(Svg.Element into, Scale gaps, Scale values, int left, int right, int top, int bottom) {
  private static final int ROOM_FOR_TICK_LABEL = 7;

  void frame(String title, String words) {
    into.rect(left, top, right - left, bottom - top)
        .set("class", "plot-frame")
        .set("fill", "none")
        .set("stroke", "#867f6c");
    Svg.Element heading = into.label(left, top - 7, "start", title).set("font-size", "12.5");
    heading.set("font-weight", "600");
    heading.add("tspan").set("class", "soft").set("font-weight", "400").text(" \u00b7 " + words);
  }

  void gapTicks(List<BigDecimal> ticks) {
    for (BigDecimal tick : ticks) {
      double x = gaps.at(tick.doubleValue());
      into.line(x, top, x, bottom).set("class", "plot-grid").set("stroke", "#e9e5d8");
    }
  }

  void valueTicks(List<BigDecimal> ticks) {
    for (BigDecimal tick : ticks) {
      double y = values.at(tick.doubleValue());
      into.line(left, y, right, y).set("class", "plot-grid").set("stroke", "#e9e5d8");
      number(left - ROOM_FOR_TICK_LABEL, y + 4, "end", text(tick));
    }
  }

  /** Hatched between its limits, with the limits written at the right. */
  void band(CurvePicture.Band band, String hatch, int decimals) {
    double top = values.at(band.high());
    double bottom = values.at(band.low());
    into.rect(left, top, right - left, bottom - top)
        .set("class", "plot-band")
        .set("fill", "url(#" + hatch + ")");
    for (double limit : new double[] {band.low(), band.high()}) {
      if (values.shows(limit)) {
        double y = values.at(limit);
        into.line(left, y, right, y)
            .set("class", "plot-limit")
            .set("stroke", "#0d6b57")
            .set("stroke-width", 1.2);
      }
    }
    limitLabels(band, decimals);
  }

  /** Labels of a narrow band are pushed apart so that both can be read. */
  private void limitLabels(CurvePicture.Band band, int decimals) {
    double high = values.at(band.high());
    double low = values.at(band.low());
    double apart = Math.max(0, 12 - (low - high)) / 2;
    number(right + 6, high - apart + 4, "start", fixed(band.high(), decimals));
    number(right + 6, low + apart + 4, "start", fixed(band.low(), decimals));
  }

  private static String fixed(double value, int decimals) {
    return BigDecimal.valueOf(value)
        .setScale(decimals, RoundingMode.HALF_EVEN)
        .toPlainString()
        .replace('-', '\u2212');
  }

  private void number(double x, double y, String anchor, String number) {
    into.label(x, y, anchor, number).set("class", "n soft").set("font-size", "11");
  }

  static String text(BigDecimal number) {
    return Numbers.plain(number).replace('-', '\u2212');
  }

  double x(double gap) {
    return gaps.at(gap);
  }

  double y(double value) {
    return values.at(value);
  }
}
