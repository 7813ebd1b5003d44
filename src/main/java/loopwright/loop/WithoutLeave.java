package loopwright.loop;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.Verdict;
import org.jooq.DSLContext;

/**
 * A survey is no way around the rules. One that puts a refused loop on record within a shift after
 * an assembly was refused there, or with parts that were in stock, is told as "left without
 * concession"; while a site is being read in, parts on record as in stock say nothing. Common
 * practice, no source; the length of a shift is 12 hours.
 */
final class WithoutLeave {
  static final String NOT_RECORDED = "assembly not recorded";
  static final String LEFT = "left without concession";
  private static final Duration SHIFT = Duration.ofHours(12);

  private final EventStore events;

  WithoutLeave(EventStore events) {
    this.events = events;
  }

  void flag(Tx tx, PointStore.Located point, Judging.Judged judged, Instant at, boolean fromStock) {
    if (judged.judgement().verdict() != Verdict.REFUSED) {
      return;
    }
    boolean afterRefusal = refusedBefore(tx, point, at) || refusedBefore(tx, point, tx.at());
    if (afterRefusal || fromStock && !point.adopting()) {
      String because =
          afterRefusal
              ? "An assembly was refused here less than 12 hours before."
              : "It holds parts that were in stock.";
      events.add(tx, point.point(), LEFT, at, judged.judgement(), because);
    }
  }

  /** Asked of the moment of the survey and of its entry, which may say of itself that it is old. */
  private boolean refusedBefore(Tx tx, PointStore.Located point, Instant moment) {
    return events.isOneBetween(tx.sql(), point.point(), NOT_RECORDED, moment.minus(SHIFT), moment);
  }

  /**
   * Whether a loop that was known before now holds parts that lay in stock; a first survey of a
   * loop says nothing of the kind.
   */
  static boolean takesFromStock(
      List<Placed> before, Collection<Placed> taken, PartFacts parts, DSLContext sql) {
    boolean known = before.stream().anyMatch(placed -> placed.content() instanceof Content.Part);
    if (!known) {
      return false;
    }
    Set<Long> here =
        before.stream()
            .flatMap(placed -> placed.content().component().stream().boxed())
            .collect(Collectors.toSet());
    List<Long> fresh =
        taken.stream()
            .filter(placed -> placed.point() == before.get(0).point())
            .flatMap(placed -> placed.content().component().stream().boxed())
            .filter(component -> !here.contains(component))
            .toList();
    Map<Long, PartView> views = parts.parts(sql, fresh);
    return views.values().stream().anyMatch(view -> view.state() == PartState.IN_STOCK);
  }
}
