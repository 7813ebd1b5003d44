package loopwright.datasheet;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.matching.Approval;
import loopwright.matching.Connector;
import loopwright.matching.Entity;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/** A data sheet name by name, in words; only what that kind of part has. */
final class SheetWords {
  private static final String NOT_KNOWN = "not known";

  private SheetWords() {}

  static Map<String, String> of(Subject subject, SheetDetails details) {
    Map<String, String> words = of(subject, details.sheet());
    if (subject.isDriver()) {
      words.put("Supply", range(details.supplyVolts(), "V"));
    }
    words.put("Source", details.source().isEmpty() ? "not said" : details.source());
    return words;
  }

  static Map<String, String> of(Subject subject, PartSheet sheet) {
    Map<String, String> words = new LinkedHashMap<>();
    if (subject.hasConnectorTowardProbe()) {
      words.put("Connector toward the probe", text(sheet.towardProbe()));
    }
    if (subject.hasConnectorTowardDriver()) {
      words.put("Connector toward the driver", text(sheet.towardDriver()));
    }
    words.put("Stands", range(sheet.celsius(), "°C"));
    words.put("Approved for", approval(sheet.approval()));
    if (subject.isDriver() || subject.isBarrier()) {
      words.put("Entity parameters", entity(sheet.entity(), subject.isBarrier() ? "o" : "i"));
    }
    return words;
  }

  /** Those that differ, each as before → after. */
  static Map<String, String> changed(Map<String, String> before, Map<String, String> after) {
    Map<String, String> changed = new LinkedHashMap<>();
    after.forEach(
        (name, now) -> {
          String was = before.getOrDefault(name, NOT_KNOWN);
          if (!was.equals(now)) {
            changed.put(name, was + " → " + now);
          }
        });
    return changed;
  }

  private static String approval(@Nullable Approval approval) {
    if (approval == null) {
      return NOT_KNOWN;
    }
    return approval
        + (approval.intrinsicallySafe() ? ", intrinsically safe" : "")
        + (approval.coversChain() ? ", with probe and cable" : "")
        + (approval.certificate().isEmpty() ? "" : ", certificate " + approval.certificate());
  }

  private static String entity(Entity entity, String side) {
    return entity.isNotGiven()
        ? NOT_KNOWN
        : "U%1$s %2$s V, I%1$s %3$s mA, P%1$s %4$s mW, C%1$s %5$s nF, L%1$s %6$s µH"
            .formatted(
                side,
                shown(entity.volts()),
                shown(entity.milliamperes()),
                shown(entity.milliwatts()),
                shown(entity.nanofarads()),
                shown(entity.microhenries()));
  }

  private static String range(Range range, String unit) {
    return range.isNotSaid()
        ? NOT_KNOWN
        : shown(range.low()) + " to " + shown(range.high()) + " " + unit;
  }

  private static String text(@Nullable Connector connector) {
    return connector == null ? NOT_KNOWN : connector.toString();
  }

  private static String shown(@Nullable BigDecimal number) {
    return number == null ? "?" : Numbers.plain(number).replace('-', '−');
  }
}
