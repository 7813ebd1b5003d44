package loopwright.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One field of a record that a row changes, as people read it.
 *
 * @param before empty when nothing was recorded
 * @param after empty when nothing will be
 */
public record FieldChange(String field, String before, String after) {

  /** The fields that differ. */
  static List<FieldChange> between(Map<String, String> before, Map<String, String> after) {
    List<FieldChange> changes = new ArrayList<>();
    after.forEach(
        (field, now) -> {
          String was = before.getOrDefault(field, "");
          if (!was.equals(now)) {
            changes.add(new FieldChange(field, was, now));
          }
        });
    return changes;
  }
}
