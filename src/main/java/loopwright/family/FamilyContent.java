package loopwright.family;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.register.FamilyDetails;
import loopwright.units.Numbers;
import org.erdtman.jcs.JsonCanonicalizer;
import org.jspecify.annotations.Nullable;

/**
 * All that a family says, name by name, in words; and the same as canonical JSON (RFC 8785), as
 * versions keep it. Names once written are never used for something else.
 */
final class FamilyContent {
  private static final ObjectMapper JSON = new ObjectMapper();

  private FamilyContent() {}

  /**
   * In the order in which it is shown.
   *
   * @param partners interchangeable families: code, and who says so
   */
  static Map<String, String> of(FamilyDetails family, Map<String, String> partners) {
    Map<String, String> words = new LinkedHashMap<>();
    words.put("code", family.code());
    words.put("name", family.name());
    words.put("maker", family.maker());
    words.put("scale factor", family.scaleFactor().toString());
    words.put(
        "linear range",
        shown(family.range().fromMicrometres()) + " to " + shown(family.range().toMicrometres()));
    words.put("start voltage", number(family.startVolts(), " V"));
    words.put("output", family.output().unit());
    words.put("drivers can put out", range(family.outputVolts()));
    words.put("tip", number(family.tipMillimetres(), " mm"));
    words.put("probe leads", lengths(family, PartKind.PROBE));
    words.put("extension cables", lengths(family, PartKind.CABLE));
    words.put("system lengths", lengths(family, PartKind.DRIVER));
    words.put("system length of a driver", family.selectableSystemLength() ? "a setting" : "fixed");
    words.put("length tolerance", number(family.lengthTolerance().metres(), " m"));
    words.put("extension cable", family.cableUse().word());
    words.put("two cables in series", family.twoCablesAllowed() ? "allowed" : "forbidden");
    words.put("connectors", said(family.connectors()));
    words.put("target alloy", said(family.targetAlloy()));
    words.put("tolerance profile", family.profile() == null ? NOT_SAID : family.profile());
    words.put("note", said(family.note()));
    partners.forEach((code, by) -> words.put(PARTNER + code, "said by " + by));
    return words;
  }

  static final String NOT_SAID = "not said";
  private static final String PARTNER = "interchangeable with ";

  private static String said(String text) {
    return text.isEmpty() ? NOT_SAID : text;
  }

  private static String lengths(FamilyDetails family, PartKind part) {
    return said(
        family.lengthsOf(part).stream()
            .map(offered -> offered.typed().toString())
            .collect(Collectors.joining("; ")));
  }

  private static String number(@Nullable BigDecimal number, String unit) {
    return number == null ? NOT_SAID : Numbers.plain(number) + unit;
  }

  private static String shown(@Nullable Double micrometres) {
    return micrometres == null ? "?" : number(BigDecimal.valueOf(micrometres), " µm");
  }

  private static String range(Range volts) {
    return volts.isNotSaid()
        ? NOT_SAID
        : number(volts.low(), "") + " to " + number(volts.high(), " V");
  }

  static String written(Map<String, String> words) {
    try {
      return new JsonCanonicalizer(JSON.writeValueAsString(words)).getEncodedString();
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    } catch (IOException notJson) {
      throw new IllegalArgumentException("A text of the family can't be written.", notJson);
    }
  }

  static Map<String, String> read(String content) {
    try {
      return JSON.readValue(content, new TypeReference<LinkedHashMap<String, String>>() {});
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
