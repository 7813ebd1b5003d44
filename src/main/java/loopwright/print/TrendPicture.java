package loopwright.print;

import java.util.List;

/**
 * Voltages over time.
 *
 * @param label the drawing in a sentence, for those who don't see it
 */
public record TrendPicture(String label, List<Line> lines) {
  public TrendPicture {
    lines = List.copyOf(lines);
  }

  /**
   * Readings that compare with one another.
   *
   * @param name in the key
   * @param days rising, since any day
   * @param volts one for each
   */
  public record Line(String name, double[] days, double[] volts) {}
}
