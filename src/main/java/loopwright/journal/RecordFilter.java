package loopwright.journal;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URLEncoder;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.time.SiteMoment;
import loopwright.web.Form;

/**
 * Which changes the record shows; all of it stands in the address, so that a filter can be shared.
 *
 * @param actor name of the person, as it was then
 * @param what kind of act
 * @param day on the clock that the page shows
 * @param before only changes older than this one
 */
record RecordFilter(
    Optional<String> actor,
    Optional<String> what,
    Optional<LocalDate> day,
    Optional<Position> before) {
  static final String PATH = "/record";

  /**
   * Where a change stands in the list.
   *
   * @param at when it was made
   * @param change its number
   */
  record Position(Instant at, long change) {
    private String text() {
      return ChronoUnit.MICROS.between(Instant.EPOCH, at) + "." + change;
    }

    private static Position read(String text) {
      String[] parts = text.split("\\.", 2);
      if (parts.length != 2) {
        throw new IllegalArgumentException("No change stands at \u201c" + text + "\u201d.");
      }
      try {
        Instant at = Instant.EPOCH.plus(Long.parseLong(parts[0]), ChronoUnit.MICROS);
        return new Position(at, Long.parseLong(parts[1]));
      } catch (NumberFormatException | ArithmeticException | java.time.DateTimeException no) {
        throw new IllegalArgumentException("No change stands at \u201c" + text + "\u201d.", no);
      }
    }
  }

  /** Reads the fields in the address; what can't be read is complained of and left out. */
  static RecordFilter of(Form form) {
    return new RecordFilter(
        given(form, "person"),
        given(form, "what"),
        form.optional("day", RecordFilter::readDay),
        form.optional("before", Position::read));
  }

  private static Optional<String> given(Form form, String name) {
    return Optional.of(form.typed(name)).filter(text -> !text.isBlank());
  }

  private static LocalDate readDay(String typed) {
    try {
      return SiteMoment.isoDay(typed);
    } catch (DateTimeException noDay) {
      throw new IllegalArgumentException(
          "\u201c" + typed + "\u201d is not a day. Give one such as 2026-11-24.", noDay);
    }
  }

  public boolean isNarrow() {
    return actor.isPresent() || what.isPresent() || day.isPresent();
  }

  /** Address of the newest page of this filter. */
  String newest() {
    List<String> fields = new ArrayList<>();
    actor.ifPresent(name -> fields.add(field("person", name)));
    what.ifPresent(kind -> fields.add(field("what", kind)));
    day.ifPresent(date -> fields.add(field("day", date.toString())));
    return PATH + (fields.isEmpty() ? "" : "?" + String.join("&", fields));
  }

  /** Address of the page that begins after that change. */
  String olderThan(Position last) {
    String newest = newest();
    return newest + (newest.contains("?") ? "&" : "?") + field("before", last.text());
  }

  private static String field(String name, String text) {
    return name + "=" + URLEncoder.encode(text, UTF_8);
  }
}
