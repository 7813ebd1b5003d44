package loopwright.loop;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import loopwright.time.SiteMoment;
import loopwright.web.Form;

/** The fields {@code on} and {@code time} of a form: when something was found, left or measured. */
public final class TypedMoment {
  private TypedMoment() {}

  /** The moment on the site's clock, not in the future; complaints stay with the form. */
  public static Optional<Instant> read(Form form, ZoneId zone, Instant now) {
    LocalDate day = form.read("on", SiteMoment::day);
    LocalTime time = form.read("time", SiteMoment::time);
    if (form.complaint("on") != null || form.complaint("time") != null) {
      return Optional.empty();
    }
    boolean later = day.isAfter(SiteMoment.day(now, zone));
    String wrong = later ? "on" : "time";
    Instant at = form.read(wrong, typed -> past(SiteMoment.of(day, time, zone), zone, now));
    return form.complaint(wrong) == null ? Optional.of(at) : Optional.empty();
  }

  private static Instant past(Instant at, ZoneId zone, Instant now) {
    if (at.isAfter(now)) {
      throw new IllegalArgumentException(
          "%s is in the future: at the site it is %s now. Give the moment at which it was so."
              .formatted(SiteMoment.shown(at, zone), SiteMoment.shown(now, zone)));
    }
    return at;
  }
}
