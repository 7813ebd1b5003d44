package loopwright.loop;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.units.Length;
import org.jooq.DSLContext;

/** Hands out the loops whose lengths don't add up, for whoever wants to put them right. */
public final class LoopsOffBalance {
  private static final int CHUNK = 500;

  private final BalanceStore store = new BalanceStore();
  private final PointStore points = new PointStore();
  private final Judging judging;
  private final InstantSource clock;

  public LoopsOffBalance(Judging judging, InstantSource clock) {
    this.judging = judging;
    this.clock = clock;
  }

  /**
   * A loop with a balance other than zero; it may still lie within its tolerance.
   *
   * @param view as the rules see it
   * @param parts components by number, from the probe to the driver
   * @param balance fitted − tuned for
   */
  public record Off(
      String tag,
      long train,
      String trainCode,
      String site,
      LoopView view,
      Map<Long, PartView> parts,
      Length balance) {}

  /**
   * In order of their tags.
   *
   * @param train only there; empty for the whole plant
   */
  public List<Off> find(DSLContext sql, OptionalLong train) {
    List<Off> found = new ArrayList<>();
    for (List<Long> some : Chunks.of(store.off(sql, train), CHUNK)) {
      List<PointStore.Located> located = points.located(sql, some);
      Map<Long, PointStore.Located> byPoint =
          located.stream()
              .collect(Collectors.toMap(PointStore.Located::point, Function.identity()));
      List<Judging.Subject> subjects = located.stream().map(PointStore.Located::subject).toList();
      for (Judging.Judged judged : judging.judge(sql, subjects, clock.instant())) {
        PointStore.Located at = byPoint.get(judged.subject().point());
        Length balance = judged.judgement().balance();
        if (at != null && balance != null && !balance.isZero()) {
          found.add(
              new Off(
                  at.tag(),
                  at.train(),
                  at.trainCode(),
                  at.site(),
                  judged.view(),
                  parts(judged),
                  balance));
        }
      }
    }
    found.sort(Comparator.comparing(Off::tag));
    return found;
  }

  /** Trains with such a loop, by number. */
  public Set<Long> trains(DSLContext sql) {
    return store.trains(sql);
  }

  /** The view has no numbers: slots are the probe, the path as placed, and the driver. */
  private static Map<Long, PartView> parts(Judging.Judged judged) {
    Map<Long, PartView> parts = new LinkedHashMap<>();
    LoopView view = judged.view();
    int inPath = 0;
    for (Placed placed : judged.chain()) {
      loopwright.matching.Slot slot =
          placed.slot() == Slot.PROBE
              ? view.probe()
              : placed.slot() == Slot.DRIVER ? view.driver() : view.path().get(inPath++);
      if (placed.content().component().isPresent()) {
        long number = placed.content().component().getAsLong();
        slot.part().ifPresent(part -> parts.put(number, part));
      }
    }
    return parts;
  }
}
