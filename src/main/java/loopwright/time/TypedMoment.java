package loopwright.time;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
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
    return halves.length == 1
        ? SiteMoment.startOf(SiteMoment.day(halves[0]), zone)
        : SiteMoment.of(SiteMoment.day(halves[0]), SiteMoment.time(halves[1]), zone);
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
