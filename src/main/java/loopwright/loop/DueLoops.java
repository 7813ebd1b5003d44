package loopwright.loop;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * When loops are due: the last as-left and the point's interval later. Kept beside the standings,
 * so that nobody has to walk through all calibrations to see what is overdue. What is due today is
 * not overdue.
 */
public final class DueLoops {
  private final DueStore store = new DueStore();

  /** A loop with its due date. */
  public record Due(String tag, String trainCode, LocalDate dueOn, boolean overdue) {}

  /**
   * A train of which some loop is overdue.
   *
   * @param oldest due date
   */
  public record OverdueTrain(
      long train, String trainCode, String site, int loops, LocalDate oldest) {}

  /** Empty where no interval or no as-left is on record. */
  public Optional<LocalDate> of(DSLContext sql, long point) {
    return store.of(sql, point);
  }

  /**
   * Those overdue or due within so many days, the oldest first.
   *
   * @param train only of that one; null for all
   */
  public List<Due> until(DSLContext sql, Instant now, int days, @Nullable Long train, int most) {
    return store.until(sql, now, days, train, most);
  }

  /** The train with the oldest due date first. */
  public List<OverdueTrain> overdueByTrain(DSLContext sql, Instant now) {
    return store.overdueByTrain(sql, now);
  }
}
