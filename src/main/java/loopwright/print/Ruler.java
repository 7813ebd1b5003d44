package loopwright.print;

import java.math.BigDecimal;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** A ruler along the drawing: metres above its edge's lower side, feet below them. */
record Ruler(Svg.Element into, double zero, double perMetre, double end, double y) {
  static final double HEIGHT = 54;
  private static final double LEAST_BETWEEN_NUMBERS = 36;
  private static final double LEAST_BETWEEN_TICKS = 5;
  private static final double HALF_LETTER = 4.25;

  /** How far a number may reach past the ruler's end. */
  private static final double BEYOND = 8;

  private static final String[] STEPS = {
    "0.01", "0.02", "0.05", "0.1", "0.2", "0.5", "1", "2", "5", "10", "20", "50"
  };

  void draw() {
    into.line(zero, y, end, y).set("class", "chain-edge").set("stroke", "#56626e");
    row(Unit.METRE, y, 8, 21);
    double feet = y + 27;
    into.line(zero, feet, end, feet).set("class", "chain-faint").set("stroke", "#d8d3c5");
    row(Unit.FOOT, feet, 6, 20);
  }

  private void row(Unit unit, double edge, double tick, double baseline) {
    double perUnit = perMetre * unit.toCanonical(1);
    BigDecimal numbered = step(perUnit, LEAST_BETWEEN_NUMBERS);
    BigDecimal ticked = between(numbered, perUnit);
    BigDecimal at = BigDecimal.ZERO;
    while (x(at, perUnit) <= end + 0.01) {
      boolean number = at.remainder(numbered).signum() == 0;
      double x = x(at, perUnit);
      into.line(x, edge, x, edge + (number ? tick : tick / 2))
          .set("class", "chain-edge")
          .set("stroke", "#56626e");
      String text = Numbers.plain(at);
      if (number && x + text.length() * HALF_LETTER <= end + BEYOND) {
        number(x, edge + baseline, text);
      }
      at = at.add(ticked);
    }
    number(zero - 22, edge + baseline, unit.symbol());
  }

  private double x(BigDecimal at, double perUnit) {
    return zero + at.doubleValue() * perUnit;
  }

  private void number(double x, double baseline, String text) {
    into.label(x, baseline, "middle", text)
        .set("class", "n soft")
        .set("font-size", "14")
        .set("fill", "#56626e");
  }

  /** The least round step that leaves so much room. */
  private static BigDecimal step(double perUnit, double room) {
    for (String step : STEPS) {
      if (Double.parseDouble(step) * perUnit >= room) {
        return new BigDecimal(step);
      }
    }
    return new BigDecimal(STEPS[STEPS.length - 1]);
  }

  /** Half or a fifth of the numbered step, whichever is round and leaves room. */
  private static BigDecimal between(BigDecimal numbered, double perUnit) {
    BigDecimal fifth = numbered.divide(new BigDecimal("5"));
    BigDecimal half = numbered.divide(new BigDecimal("2"));
    boolean five = numbered.unscaledValue().intValue() % 5 == 0;
    BigDecimal small = five ? fifth : half;
    return small.doubleValue() * perUnit >= LEAST_BETWEEN_TICKS ? small : numbered;
  }
}
