package loopwright.outage;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Days as an iCalendar file (RFC 5545): one event a window or a day, all of it in whole days, so
 * that no clock moves them.
 */
final class CalendarFile {
  private static final int MOST_OCTETS = 75;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyyMMdd", Locale.ROOT);
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final StringBuilder text = new StringBuilder();
  private final String stamp;

  CalendarFile(Instant madeAt) {
    this.stamp = STAMP.format(madeAt);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Loopwright//Outages and due dates//EN");
    line("CALSCALE:GREGORIAN");
  }

  /**
   * An event of whole days.
   *
   * @param uid the same for the same thing every time the file is made
   * @param last its last day, itself inside
   */
  CalendarFile event(String uid, LocalDate first, LocalDate last, String title, String about) {
    line("BEGIN:VEVENT");
    line("UID:" + uid);
    line("DTSTAMP:" + stamp);
    line("DTSTART;VALUE=DATE:" + DAY.format(first));
    line("DTEND;VALUE=DATE:" + DAY.format(last.plusDays(1)));
    line("SUMMARY:" + escaped(title));
    line("DESCRIPTION:" + escaped(about));
    line("TRANSP:TRANSPARENT");
    line("END:VEVENT");
    return this;
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replace("\r", "")
        .replace("\n", "\\n");
  }

  /** Longer lines go on behind a line break and a blank; a character is never cut in two. */
  private void line(String content) {
    int octets = 0;
    for (int at = 0; at < content.length(); ) {
      int character = content.codePointAt(at);
      String one = Character.toString(character);
      int size = one.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > MOST_OCTETS) {
        text.append("\r\n ");
        octets = 1;
      }
      text.append(one);
      octets += size;
      at += Character.charCount(character);
    }
    text.append("\r\n");
  }

  byte[] bytes() {
    return (text + "END:VCALENDAR\r\n").getBytes(StandardCharsets.UTF_8);
  }
}
