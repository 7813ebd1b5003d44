package loopwright.importing;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What there is and what the files would add, by the names that rows use. What is only planned has
 * a number below zero until the run gives it a real one. Belongs to one plan.
 */
final class World {
  enum Thing {
    FAMILY,
    COMPONENT,
    SITE,
    TRAIN,
    MACHINE,
    POINT,
    CHANNEL,
    GROUP
  }

  /** A thing by its name in capitals. */
  record Key(Thing thing, String name) {
    static Key of(Thing thing, String... names) {
      return new Key(thing, String.join("|", names).toUpperCase(Locale.ROOT));
    }
  }

  /**
   * @param number below zero while it is planned
   * @param row that would add it; null for what is recorded
   * @param refused the row that should add it is refused, so what needs it is too
   */
  record Entry(long number, @Nullable RowPlace row, boolean refused) {
    boolean isPlanned() {
      return number < 0;
    }
  }

  private final Map<Key, Entry> entries = new HashMap<>();
  private long planned;

  void recorded(Key key, long number) {
    entries.put(key, new Entry(number, null, false));
  }

  /** Gives it a number below zero. */
  long plan(Key key, RowPlace row) {
    planned--;
    entries.put(key, new Entry(planned, row, false));
    return planned;
  }

  /** The row that should add it can't be taken up; what is recorded stays known. */
  void refuse(Key key, RowPlace row) {
    planned--;
    entries.putIfAbsent(key, new Entry(planned, row, true));
  }

  Optional<Entry> find(Key key) {
    return Optional.ofNullable(entries.get(key));
  }
}
