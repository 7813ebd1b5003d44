package loopwright.time;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;

/** Days and times as a site's clock shows them. */
public final class SiteMoment {
  private static final DateTimeFormatter SHOWN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private SiteMoment() {}

  /** A bare day means its start at the site, whatever hour that is. */
  public static Instant startOf(LocalDate day, ZoneId zone) {
    return day.atStartOfDay(zone).toInstant();
  }

  /**
   * The moment at which the site's clock showed this.
   *
   * @throws IllegalArgumentException if it showed it never (clocks were put forward) or twice
   */
  public static Instant of(LocalDate day, LocalTime time, ZoneId zone) {
    ZonedDateTime moment = ZonedDateTime.of(day, time, zone);
    if (!moment.toLocalTime().equals(time)) {
      throw new IllegalArgumentException(
          "On "
              + day
              + " the clocks in "
              + zone
              + " were put forward past "
              + time
              + ". Give a time before or after.");
    }
    if (!moment.withEarlierOffsetAtOverlap().equals(moment.withLaterOffsetAtOverlap())) {
      throw new IllegalArgumentException(
          "On "
              + day
              + " the clocks in "
              + zone
              + " showed "
              + time
              + " twice. Give a time outside the hour that came twice.");
    }
    return moment.toInstant();
  }

  /** {@code 2026-03-14 09:40} on the site's clock. */
  public static String shown(Instant moment, ZoneId zone) {
    return SHOWN.format(moment.atZone(zone));
  }

  public static LocalDate day(Instant moment, ZoneId zone) {
    return moment.atZone(zone).toLocalDate();
  }

  /**
   * A day as typed.
   *
   * @throws IllegalArgumentException if it isn't one
   */
  public static LocalDate day(String typed) {
    try {
      return LocalDate.parse(typed.strip());
    } catch (DateTimeParseException wrong) {
      throw new IllegalArgumentException("Give the day like 2026-03-14.", wrong);
    }
  }

  /**
   * A time of day as typed.
   *
   * @throws IllegalArgumentException if it isn't one
   */
  public static LocalTime time(String typed) {
    try {
      return LocalTime.parse(typed.strip());
    } catch (DateTimeParseException wrong) {
      throw new IllegalArgumentException("Give the time like 14:30.", wrong);
    }
  }
}
