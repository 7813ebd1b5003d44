package loopwright.outage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** The iCalendar file, held against RFC 5545 (from memory): 3.1 folding, 3.3.11 escaping. */
class CalendarFileTest {

  private static String file(String title, String about) {
    return new String(
        new CalendarFile(Instant.parse("2026-03-01T10:15:30Z"))
            .event("O-1@x", LocalDate.of(2026, 4, 1), LocalDate.of(2026, 4, 12), title, about)
            .bytes(),
        StandardCharsets.UTF_8);
  }

  @Test
  void theEndIsTheDayAfterTheLastAndNoClockMovesIt() {
    assertThat(file("Spring", "K-301"))
        .startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n")
        .endsWith("END:VCALENDAR\r\n")
        .contains(
            "DTSTAMP:20260301T101530Z\r\n",
            "DTSTART;VALUE=DATE:20260401\r\n",
            "DTEND;VALUE=DATE:20260413\r\n");
  }

  @Test
  void separatorsInATextStayText() {
    assertThat(file("a, b; c", "one\ntwo\\"))
        .contains("SUMMARY:a\\, b\\; c\r\n", "DESCRIPTION:one\\ntwo\\\\\r\n");
  }

  @Test
  void linesOfMoreThan75OctetsGoOnBehindABlankAndReadTheSame() {
    String long1 = "ü".repeat(100) + " 🛠 end";
    String text = file(long1, "x");
    assertThat(text.lines())
        .allSatisfy(
            line ->
                assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75));
    assertThat(text.replace("\r\n ", "")).contains("SUMMARY:" + long1 + "\r\n");
  }
}
