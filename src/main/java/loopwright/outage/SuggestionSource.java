package loopwright.outage;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;

/**
 * What speaks for working on loops beside how they are judged; given by the feature that keeps it.
 */
@FunctionalInterface
public interface SuggestionSource {

  /**
   * By point; loops of which nothing is to be said are left out.
   *
   * @param until last day of the window
   */
  Map<Long, List<Suggestion.Reason>> of(DSLContext sql, Collection<Long> points, LocalDate until);
}
