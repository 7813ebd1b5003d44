package loopwright.journal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Act;
import loopwright.db.Fact;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The examples are those of RFC 8785, 3.2.2 and 3.2.3, from memory. */
class CanonicalFormValidationTest {

  private static String canonical(Map<String, Object> entry) {
    return new String(Entry.canonical(entry), UTF_8);
  }

  /** RFC 8785, 3.2.3: names are sorted by their UTF-16 code units, so the emoji precedes U+FB33. */
  @Example
  void namesAreSortedByUtf16Units() {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("\u20ac", "Euro Sign");
    entry.put("\r", "Carriage Return");
    entry.put("\ufb33", "Hebrew Letter Dalet With Dagesh");
    entry.put("1", "One");
    entry.put("\ud83d\ude00", "Emoji: Grinning Face");
    entry.put("\u0080", "Control");
    entry.put("\u00f6", "Latin Small Letter O With Diaeresis");
    assertThat(canonical(entry))
        .isEqualTo(
            "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
                + "\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\","
                + "\"\ud83d\ude00\":\"Emoji: Grinning Face\","
                + "\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}");
  }

  /** RFC 8785, 3.2.2.2: two-letter escapes where there are such, else lower-case hex, else none. */
  @Example
  void textsAreEscapedAsLittleAsCanBe() {
    String text = "\u20ac$\u000f\nA'B\"\\\\\"/\b\f\t\u007f\u2028";
    assertThat(canonical(Map.of("string", text)))
        .isEqualTo("{\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\\b\\f\\t\u007f\u2028\"}");
  }

  @Property(tries = 300)
  void whatIsWrittenReadsBackTheSameAndIsCanonical(
      @ForAll String reason, @ForAll String column, @ForAll long number) throws Exception {
    String given = "because " + reason.replaceAll("[\\ud800-\\udfff]", "");
    Map<String, String> row = Map.of("note", column.replaceAll("[\\ud800-\\udfff]", ""));
    Fact fact = new Fact("insert", "site", "7", Map.of(), List.of(row), "ab");
    Act act = new Act(number, "A. Tester", "viewer", "try", given);
    Instant at = Instant.parse("2026-03-01T10:15:30.000001Z");
    byte[] body = Entry.canonical(number, 3, act, at, 1, true, List.of(fact));
    EntryBody read = EntryBody.read(number, body);
    assertThat(read).isEqualTo(new EntryBody(number, 3, 1, true, at, act, List.of(fact)));
    assertThat(new org.erdtman.jcs.JsonCanonicalizer(body).getEncodedUTF8()).isEqualTo(body);
  }
}
