package loopwright.register;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Finds the moments at which a part became another one electrically. */
final class LengthChange {
  private LengthChange() {}

  /**
   * @param line beliefs about one part, oldest first
   */
  static List<Instant> moments(List<Belief> line) {
    List<Instant> moments = new ArrayList<>();
    for (int i = 1; i < line.size(); i++) {
      if (isAnother(line.get(i - 1).facts(), line.get(i).facts())) {
        moments.add(line.get(i).span().from());
      }
    }
    return moments;
  }

  /** What was not known before is learned, not changed. */
  private static boolean isAnother(ComponentFacts before, ComponentFacts after) {
    NominalLength was = before.length();
    NominalLength is = after.length();
    boolean length = was != null && is != null && !was.length().equals(is.length());
    String old = before.settingsHash();
    String fresh = after.settingsHash();
    return length || old != null && fresh != null && !old.equals(fresh);
  }
}
