package loopwright.loop;

import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.db.Database;
import loopwright.db.Derivation;
import loopwright.db.Tx;
import loopwright.loop.Allowances.Allowed;
import loopwright.matching.Calibration;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.Verdict;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Keeps how each loop is judged now. Refreshed by every change that touches a loop. */
public final class Standings {
  private static final int CHUNK = 500;

  private final StandingStore store = new StandingStore();
  private final PointStore points = new PointStore();
  private final EventStore events = new EventStore();
  private final Judging judging;
  private final InstantSource clock;
  private final Derivation atEnd = this::refresh;

  public Standings(Judging judging, InstantSource clock) {
    this.judging = judging;
    this.clock = clock;
  }

  /** Judges anew the loops whose verdict changed by the mere passing of time. */
  public void refreshDue(Database database) {
    List<Long> due = database.read(sql -> store.due(sql, clock.instant()));
    for (List<Long> some : Chunks.of(due, CHUNK)) {
      database.derive(
          sql -> {
            refresh(sql, some);
            return null;
          });
    }
  }

  /** Judges these loops anew, as they are now; a retired point has no verdict any more. */
  public void refresh(DSLContext sql, Collection<Long> which) {
    for (List<Long> some : Chunks.of(which, CHUNK)) {
      List<PointStore.Located> located = points.inUse(sql, some);
      Set<Long> retired = new TreeSet<>(some);
      located.forEach(point -> retired.remove(point.point()));
      store.remove(sql, retired);
      refreshLocated(sql, located);
    }
  }

  /** The same once, at the end of the change, however many of its facts touch a loop. */
  public void refreshAtEnd(Tx tx, Collection<Long> which) {
    tx.deriveAtEnd(atEnd, which);
  }

  /**
   * Judges every loop anew, chunk by chunk; for a program that judges by other rules than before.
   */
  public int refreshAll(Database database) {
    long last = 0;
    int judged = 0;
    while (true) {
      long after = last;
      List<PointStore.Located> chunk = database.read(sql -> points.after(sql, after, CHUNK));
      if (chunk.isEmpty()) {
        return judged;
      }
      database.derive(
          sql -> {
            refreshLocated(sql, chunk);
            return null;
          });
      judged += chunk.size();
      last = chunk.get(chunk.size() - 1).point();
    }
  }

  private void refreshLocated(DSLContext sql, List<PointStore.Located> located) {
    Instant now = clock.instant();
    Map<Long, PointStore.Located> byPoint =
        located.stream().collect(Collectors.toMap(PointStore.Located::point, Function.identity()));
    Map<Long, Instant> left = events.last(sql, byPoint.keySet(), WithoutLeave.LEFT);
    List<Standing> standings = new ArrayList<>();
    judging
        .judge(sql, located.stream().map(PointStore.Located::subject).toList(), now)
        .forEach(
            judged -> {
              PointStore.Located at = byPoint.get(judged.subject().point());
              if (at != null) {
                standings.add(standing(at, judged, left.get(at.point())));
              }
            });
    store.put(sql, standings, now);
  }

  private static Standing standing(
      PointStore.Located at, Judging.Judged judged, @Nullable Instant leftWithoutConcession) {
    Judgement judgement = judged.judgement();
    Verdict verdict =
        judgement.verdict() == Verdict.NOT_JUDGED ? Verdict.MATCHES : judgement.verdict();
    Finding worst = judgement.findings().get(0);
    boolean left =
        verdict == Verdict.REFUSED
            && leftWithoutConcession != null
            && leftWithoutConcession.equals(since(judged.chain()));
    boolean fine = verdict == Verdict.MATCHES;
    @Nullable Allowed allowed = judged.allowed();
    return new Standing(
        at.point(),
        at.train(),
        restsOnConcessions(judgement, allowed) ? Standing.NEEDS_NOBODY : urgency(verdict),
        verdict.word(),
        fine ? "" : worst.rule().name(),
        fine
            ? "All that was judged matches."
            : (left ? "Left without concession. " : "") + worst.message(),
        fine ? "" : nextStep(worst) + (left ? " Or decide on a concession." : ""),
        left ? "engineer" : owner(worst),
        judgement.balance(),
        since(judged.chain()),
        dueOn(at, judged),
        allowed == null ? null : allowed.reviewAt());
  }

  /** Counted from the last as-left, whether or not parts were exchanged since. */
  private static @Nullable LocalDate dueOn(PointStore.Located at, Judging.Judged judged) {
    Calibration latest = judged.view().calibration();
    Integer months = at.intervalMonths();
    return latest == null || months == null ? null : latest.asLeftOn().plusMonths(months);
  }

  /** Nothing but what concessions cover, and none that ends soon: nobody can do anything now. */
  private static boolean restsOnConcessions(Judgement judgement, @Nullable Allowed allowed) {
    return allowed != null
        && !allowed.soonEnds()
        && judgement.findings().stream()
            .filter(finding -> finding.verdict().isWorseThan(Verdict.MATCHES))
            .noneMatch(finding -> finding.concession().isEmpty());
  }

  private static int urgency(Verdict verdict) {
    return switch (verdict) {
      case REFUSED -> 0;
      case UNKNOWN -> 2;
      case ATTENTION -> 4;
      default -> Standing.NEEDS_NOBODY;
    };
  }

  private static String nextStep(Finding worst) {
    return worst.remedy().isEmpty() ? "Look at the loop." : worst.remedy();
  }

  private static String owner(Finding worst) {
    return worst.verdict() == Verdict.MATCHES ? "" : "shop";
  }

  /** The youngest placement: before it the loop was another one. */
  private static @Nullable Instant since(List<Placed> chain) {
    return chain.stream().map(placed -> placed.span().from()).max(Instant::compareTo).orElse(null);
  }

  StandingStore store() {
    return store;
  }
}
