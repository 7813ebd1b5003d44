package loopwright.importing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.FamilyId;
import loopwright.register.NominalLength;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/** A part field by field, as it is compared and shown; empty where nothing is known. */
final class ComponentText {
  private ComponentText() {}

  static Map<String, String> of(
      ComponentDetails details, ComponentFacts facts, Map<Long, String> familyCodes) {
    Map<String, String> text = new LinkedHashMap<>();
    text.put("shop number", details.identity().shopNumber());
    text.put("family", family(facts.family(), familyCodes));
    text.put("length", length(facts.length()));
    text.put("length evidence", evidence(facts.length()));
    text.put("physical length", length(facts.physicalLength()));
    text.put(
        "tip", facts.tipMillimetres() == null ? "" : Numbers.plain(facts.tipMillimetres()) + " mm");
    text.put("scale factor", Objects.toString(facts.scaleFactor(), ""));
    text.put("channels", String.valueOf(details.channels()));
    text.put("sensitivity", details.sensitivity());
    text.put("condition", facts.condition().word());
    text.put("condition reason", facts.conditionReason());
    text.put("store", facts.shelf().store());
    text.put("bin", facts.shelf().bin());
    text.put("due on", Objects.toString(details.dueOn(), ""));
    text.put("note", details.note());
    return text;
  }

  private static String family(@Nullable FamilyId family, Map<Long, String> codes) {
    return family == null ? "" : codes.getOrDefault(family.number(), "");
  }

  private static String length(@Nullable NominalLength length) {
    return length == null ? "" : length(length.typed());
  }

  /** Exact, and the same in whatever unit it was typed. */
  private static String length(@Nullable Reported typed) {
    return typed == null ? "" : Numbers.plain(Length.of(typed).metres()) + " m";
  }

  private static String evidence(@Nullable NominalLength length) {
    return length == null ? "" : length.evidence().word();
  }
}
