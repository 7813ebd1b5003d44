package loopwright.loop;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A place in the chain of a loop, in order from the shaft to the monitor. */
public enum Slot {
  PROBE,
  PATH_1,
  PATH_2,
  PATH_3,
  PATH_4,
  PATH_5,
  PATH_6,
  DRIVER;

  /** As stored and shown: {@code probe}, {@code path-1} …, {@code driver}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public boolean isPath() {
    return this != PROBE && this != DRIVER;
  }

  public static Optional<Slot> named(String word) {
    return Arrays.stream(values()).filter(slot -> slot.word().equals(word)).findFirst();
  }

  static Slot ofWord(String word) {
    return named(word).orElseThrow(() -> new IllegalStateException("no slot " + word));
  }
}
