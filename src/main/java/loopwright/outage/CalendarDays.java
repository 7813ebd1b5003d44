package loopwright.outage;

import java.time.LocalDate;
import java.util.List;
import org.jooq.DSLContext;

/** Days that belong into the calendar file; given by the feature that keeps them. */
@FunctionalInterface
public interface CalendarDays {

  /**
   * A day.
   *
   * @param key the same for the same thing every time
   */
  record Day(String key, LocalDate on, String title, String about) {}

  List<Day> days(DSLContext sql);
}
