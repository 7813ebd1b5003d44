package loopwright.pack;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Files that were looked at and not yet kept, in memory. The oldest is forgotten first; then the
 * page says to choose it again.
 */
final class HeldFiles {
  private static final int MOST = 24;

  private final Map<String, Held> files =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Held> eldest) {
          return size() > MOST;
        }
      };

  /** A file as it was sent. */
  record Held(String name, byte[] bytes) {}

  synchronized String hold(String name, byte[] bytes) {
    String key = Frozen.hash(bytes);
    files.put(key, new Held(name, bytes));
    return key;
  }

  synchronized Optional<Held> held(String key) {
    return Optional.ofNullable(files.get(key));
  }
}
