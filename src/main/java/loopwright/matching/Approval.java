package loopwright.matching;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * For what hazardous area a part is approved, as its certificate says.
 *
 * @param certificate its number; empty if not said
 * @param intrinsicallySafe whether the protection rests on a limited circuit (ia, ib, ic), so that
 *     entity parameters have to be summed up
 * @param coversChain whether a driver's certificate covers the probe and the path to it
 */
public record Approval(
    String certificate,
    Level level,
    AreaClass.GasGroup group,
    AreaClass.TemperatureClass temperature,
    boolean intrinsicallySafe,
    boolean coversChain) {

  /** Equipment protection level for gas; declared best first. */
  public enum Level {
    GA("Ga"),
    GB("Gb"),
    GC("Gc");

    private final String word;

    Level(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }

    public boolean isAtLeast(Level other) {
      return ordinal() <= other.ordinal();
    }

    /** The one of that word, in any case. */
    public static Optional<Level> named(String word) {
      String plain = word.strip().toLowerCase(Locale.ROOT);
      return Stream.of(values())
          .filter(one -> one.word.toLowerCase(Locale.ROOT).equals(plain))
          .findFirst();
    }
  }

  /** For sentences: {@code Gb IIC T4}. */
  @Override
  public String toString() {
    return level.word() + " " + group + " " + temperature;
  }
}
