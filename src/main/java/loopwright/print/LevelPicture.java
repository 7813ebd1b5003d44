package loopwright.print;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where set points were meant to act and where they do, on one axis. Every number is finite and in
 * the unit named.
 *
 * @param label the drawing in a sentence, for those who don't see it
 * @param unit of the axis
 * @param rows one for each set point
 * @param clipsAt from here on the signal clips; null where that isn't known
 */
public record LevelPicture(String label, String unit, List<Row> rows, @Nullable Double clipsAt) {

  public LevelPicture {
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("There is a set point to draw.");
    }
  }

  /**
   * One set point.
   *
   * @param meant where it was meant to act
   * @param acts where it does; null where that lies beyond what is known
   */
  public record Row(String name, double meant, @Nullable Double acts) {}
}
