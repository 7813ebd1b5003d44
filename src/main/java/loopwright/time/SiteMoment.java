package loopwright.time;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.regex.Pattern;

/** Days and times as a site's clock shows them. */
public final class SiteMoment {
  private static final DateTimeFormatter SHOWN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  private static final Pattern TIME = Pattern.compile("\\d{2}:\\d{2}(:\\d{2})?");
  private static final String TIME_WANTED = "Give the time like 14:30.";

  /** Eddy-current probes came later; a day before it is a slip of the year. From memory. */
  private static final int EARLIEST_YEAR = 1950;

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
   * @throws IllegalArgumentException if it isn't one, or lies before {@value #EARLIEST_YEAR}
   */
  public static LocalDate day(String typed) {
    LocalDate day;
    try {
      day = isoDay(typed);
    } catch (DateTimeException wrong) {
      throw new IllegalArgumentException("Give the day like 2026-03-14.", wrong);
    }
    if (day.getYear() < EARLIEST_YEAR) {
      throw new IllegalArgumentException(
          "%s lies before %s, when no loop of this kind stood anywhere. Give all four digits of the year."
              .formatted(day, EARLIEST_YEAR));
    }
    return day;
  }

  /**
   * A day written as ISO 8601 has it, with a year of four digits and nothing before or behind.
   *
   * @throws DateTimeException if it isn't one
   */
  public static LocalDate isoDay(String typed) {
    String day = typed.strip();
    if (!DAY.matcher(day).matches()) {
      throw new DateTimeException("not a day of a year with four digits");
    }
    return LocalDate.parse(day);
  }

  /**
   * A time of day as typed, to the second at most.
   *
   * @throws IllegalArgumentException if it isn't one
   */
  public static LocalTime time(String typed) {
    String time = typed.strip();
    try {
      if (TIME.matcher(time).matches()) {
        return LocalTime.parse(time);
      }
    } catch (DateTimeParseException wrong) {
      throw new IllegalArgumentException(TIME_WANTED, wrong);
    }
    throw new IllegalArgumentException(TIME_WANTED);
  }
}
