package loopwright.time;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;

/**
 * Moments as people type them in one field: a day, a minute of the site's clock, or with offset.
 */
public final class TypedMoment {
  private TypedMoment() {}

  /**
   * A bare day is its start at the site. With an offset ({@code 2026-10-25T02:30+02:00}) the hour
   * that came twice can be told apart.
   *
   * @throws IllegalArgumentException if it can't be read, or the site's clock showed it never or
   *     twice
   */
  public static Instant read(String typed, ZoneId zone) {
    String text = typed.strip();
    if (text.matches(".*:\\d\\d(\\.\\d+)?(Z|[+-]\\d\\d:\\d\\d)")) {
      return withOffset(text);
    }
    String[] halves = text.split("[T ]+", 2);
    if (!halves[0].matches("\\d{4}-\\d\\d-\\d\\d")) {
      throw notRead(typed, null);
    }
    LocalDate day = SiteMoment.day(halves[0]);
    return halves.length == 1
        ? SiteMoment.startOf(day, zone)
        : once(day, SiteMoment.time(halves[1]), zone);
  }

  /** Here the hour that came twice can be told apart, so both are offered. */
  private static Instant once(LocalDate day, LocalTime time, ZoneId zone) {
    ZonedDateTime moment = ZonedDateTime.of(day, time, zone);
    ZonedDateTime first = moment.withEarlierOffsetAtOverlap();
    ZonedDateTime second = moment.withLaterOffsetAtOverlap();
    if (!first.equals(second)) {
      throw new IllegalArgumentException(
          "On %s the clocks in %s showed %s twice. Which do you mean: %s or, after they were put back, %s?"
              .formatted(day, zone, time, withOffset(first), withOffset(second)));
    }
    return SiteMoment.of(day, time, zone);
  }

  private static String withOffset(ZonedDateTime moment) {
    return moment.toOffsetDateTime().toString();
  }

  /** How a moment is typed so that it is read back as exactly this one. */
  public static String text(Instant moment, ZoneId zone) {
    String shown = SiteMoment.shown(moment, zone);
    try {
      return read(shown, zone).equals(moment) ? shown : withOffset(moment.atZone(zone));
    } catch (IllegalArgumentException twice) {
      return withOffset(moment.atZone(zone));
    }
  }

  private static Instant withOffset(String text) {
    try {
      return OffsetDateTime.parse(text.replace(' ', 'T')).toInstant();
    } catch (DateTimeParseException wrong) {
      throw notRead(text, wrong);
    }
  }

  private static IllegalArgumentException notRead(
      String typed, @org.jspecify.annotations.Nullable Throwable cause) {
    return new IllegalArgumentException(
        "\u201c" + typed + "\u201d is no moment. Give it like 2026-03-14 or 2026-03-14 09:40.",
        cause);
  }

  /** Whether it names a minute without seconds. */
  public static boolean isMinute(String typed) {
    return typed.strip().matches("\\d{4}-\\d\\d-\\d\\d[T ]+\\d\\d:\\d\\d");
  }
}
