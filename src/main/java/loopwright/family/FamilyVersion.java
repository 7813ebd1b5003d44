package loopwright.family;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import loopwright.register.ChangeNote;

/**
 * What a family said after one change of it.
 *
 * @param number counted from 1
 * @param words name by name
 * @param entry number of the journal entry since which it is known
 * @param made who made it, when and why
 */
public record FamilyVersion(int number, Map<String, String> words, long entry, ChangeNote made) {

  /** What one says and the other doesn't, each as then → now, by name. */
  static Map<String, String> between(Map<String, String> then, Map<String, String> now) {
    Set<String> names = new TreeSet<>(then.keySet());
    names.addAll(now.keySet());
    Map<String, String> changed = new TreeMap<>();
    for (String name : names) {
      String was = then.getOrDefault(name, FamilyContent.NOT_SAID);
      String is = now.getOrDefault(name, FamilyContent.NOT_SAID);
      if (!was.equals(is)) {
        changed.put(name, was + " → " + is);
      }
    }
    return changed;
  }
}
