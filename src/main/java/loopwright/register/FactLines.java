package loopwright.register;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.units.Numbers;

/** The facts of a part, name by name, in words. */
final class FactLines {
  private FactLines() {}

  /**
   * In the order shown.
   *
   * @param codes of families by number
   */
  static Map<String, String> of(PartKind kind, ComponentFacts facts, Map<Long, String> codes) {
    Map<String, String> lines = new LinkedHashMap<>();
    lines.put("Family", family(facts, codes));
    lines.put(PartWords.lengthName(kind), PartWords.length(facts.length()));
    lines.put("Measured with a tape", PartWords.physical(facts.physicalLength()));
    lines.put(
        "Tip",
        facts.tipMillimetres() == null
            ? PartWords.NOT_KNOWN
            : Numbers.plain(facts.tipMillimetres()) + " mm");
    lines.put("Scale factor", PartWords.scale(facts.scaleFactor()));
    lines.put("Condition", condition(facts));
    lines.put("Shelf", facts.shelf().inWords().isEmpty() ? "not said" : facts.shelf().inWords());
    if (facts.settingsHash() != null) {
      lines.put("Settings file", facts.settingsHash());
    }
    return lines;
  }

  /** Those that differ, each as before → after. */
  static Map<String, String> changed(Map<String, String> before, Map<String, String> after) {
    Map<String, String> changed = new LinkedHashMap<>();
    after.forEach(
        (name, now) -> {
          String was = before.getOrDefault(name, "not said");
          if (!was.equals(now)) {
            changed.put(name, was + " → " + now);
          }
        });
    return changed;
  }

  private static String family(ComponentFacts facts, Map<Long, String> codes) {
    return facts.family() == null
        ? PartWords.NOT_KNOWN
        : codes.getOrDefault(facts.family().number(), PartWords.NOT_KNOWN);
  }

  private static String condition(ComponentFacts facts) {
    return facts.conditionReason().isEmpty()
        ? facts.condition().word()
        : facts.condition().word() + ": " + facts.conditionReason();
  }
}
