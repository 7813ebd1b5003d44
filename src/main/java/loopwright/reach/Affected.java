package loopwright.reach;

import java.time.LocalDate;
import java.util.List;
import loopwright.standard.Standard;
import org.jspecify.annotations.Nullable;

/**
 * A standard whose results another standard's error reaches, and for which of them.
 *
 * @param certificate the results made on that certificate count; null where a time counts
 * @param from first day of that time
 * @param until first day after it
 * @param path from the standard found wrong to this one, in words
 * @param whyNot why the error can't be carried into results by numbers; empty where it can
 */
record Affected(
    Standard standard,
    @Nullable Long certificate,
    LocalDate from,
    LocalDate until,
    List<String> path,
    String whyNot) {

  Affected {
    path = List.copyOf(path);
  }

  boolean carries() {
    return whyNot.isEmpty();
  }

  String pathInWords() {
    return String.join(" → ", path);
  }
}
