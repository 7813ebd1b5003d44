package loopwright.loop;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.matching.Finding;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/**
 * Changes what is recorded as fitted. A survey says what was found and is never refused, always
 * judged; an assembly says what is left and is refused unless it matches.
 */
public final class Configuration {
  private final PlacementStore placements = new PlacementStore();
  private final EventStore events = new EventStore();
  private final PointStore points = new PointStore();
  private final DisputeStore disputes = new DisputeStore();
  private final PartFacts parts;
  private final Judging judging;
  private final Standings standings;
  private final InstantSource clock;

  public Configuration(PartFacts parts, Judging judging, Standings standings, InstantSource clock) {
    this.parts = parts;
    this.judging = judging;
    this.standings = standings;
    this.clock = clock;
  }

  /** Makes other changes of this loop and of these parts wait until this change is through. */
  public void holdStill(Tx tx, long point, Chain chain) {
    List<Long> components =
        chain.slots().values().stream().flatMap(c -> c.component().stream().boxed()).toList();
    placements.holdStill(tx.sql(), point, components);
  }

  /** The same for one part, or for what sits there when it is none. */
  void holdStill(Tx tx, long point, Content content) {
    placements.holdStill(tx.sql(), point, content.component().stream().boxed().toList());
  }

  /**
   * Records what was found fitted, and judges it.
   *
   * @param at when it was found
   * @param note in the finder's words; may be empty
   * @throws Refused if the moment is in the future or there is no such point
   */
  public Judging.Judged survey(Tx tx, long point, Chain chain, Instant at, String note) {
    return record(tx, point, chain, at, "survey", note);
  }

  /**
   * Records what is left fitted.
   *
   * @throws Refused {@link LoopProblem#DOES_NOT_MATCH} with the reasons if it does not match; then
   *     nothing is recorded
   */
  public Judging.Judged assembly(Tx tx, long point, Chain chain, Instant at, String note) {
    PointStore.Located located = points.located(tx.sql(), point);
    Judging.Judged judged = judging.judge(tx.sql(), located.subject(), chain, at);
    List<Finding> against = judged.judgement().againstAssembly();
    if (!against.isEmpty()) {
      throw new Refused(
          LoopProblem.DOES_NOT_MATCH,
          against.stream().map(Finding::sentences).collect(Collectors.joining(" ")));
    }
    return record(tx, point, chain, at, "assembly", note);
  }

  private Judging.Judged record(
      Tx tx, long point, Chain chain, Instant at, String kind, String note) {
    refuseFuture(at);
    PointStore.Located located = points.located(tx.sql(), point);
    List<Placed> before = placements.at(tx.sql(), point, at);
    Rewriting rewriting =
        Rewriting.of(placements, tx.sql(), point, at, kind, events::claimedAt, chain);
    boolean fromStock = WithoutLeave.takesFromStock(before, rewriting.taken(), parts, tx.sql());
    Set<Long> touched = new TreeSet<>(rewriting.displaced());
    touched.add(point);
    rewriting.contested().forEach(contested -> touched.add(contested.standing().point()));
    List<Leaves> leaves =
        Leaves.at(tx.sql(), placements, judging.allowances(), touched, at, clock.instant());
    placements.rewrite(tx, rewriting.retired(), rewriting.taken());
    parts.placementsChanged(tx, rewriting.components());
    leaves.forEach(some -> some.endWhereExchanged(tx, placements, judging.allowances()));
    Judging.Judged judged = judging.judge(tx.sql(), List.of(located.subject()), at).get(0);
    events.add(tx, point, kind, at, judged.judgement(), note);
    if (kind.equals("survey")) {
      new WithoutLeave(events).flag(tx, located, judged, at, fromStock);
    }
    for (long other : rewriting.displaced()) {
      events.add(
          tx,
          other,
          "displaced",
          at,
          null,
          "A part of this loop was found at " + located.tag() + ".");
    }
    rewriting.contested().forEach(contested -> dispute(tx, located, contested));
    standings.refresh(tx.sql(), touched);
    return judged;
  }

  /** Told at both points: neither claim is worth more than the other. */
  private void dispute(Tx tx, PointStore.Located here, Rewriting.Contested contested) {
    disputes.add(tx, contested);
    long standing = contested.standing().point();
    Instant at = contested.at();
    events.add(tx, standing, "disputed", at, null, disputed(here.tag()));
    events.add(
        tx, here.point(), "disputed", at, null, disputed(placements.tag(tx.sql(), standing)));
  }

  private static String disputed(String other) {
    return "A part of this loop was also found at %s for the same moment: one serial was misread."
        .formatted(other);
  }

  /** Keeps that somebody tried to leave what does not match; what is recorded as fitted stays. */
  void rememberRefused(Tx tx, long point, Chain chain, Instant at, String note) {
    PointStore.Located located = points.located(tx.sql(), point);
    Judging.Judged judged = judging.judge(tx.sql(), located.subject(), chain, at);
    events.add(tx, point, WithoutLeave.NOT_RECORDED, at, judged.judgement(), note);
  }

  private void refuseFuture(Instant at) {
    if (at.isAfter(clock.instant())) {
      throw new Refused(LoopProblem.IN_FUTURE, at);
    }
  }

  /**
   * Takes up what files say was fitted, as surveys of their moments. Overlaps are refused by the
   * database and should have been found before.
   */
  public void importPlacements(Tx tx, ImportedPlacements imported) {
    List<Leaves> leaves =
        Leaves.at(tx.sql(), placements, judging.allowances(), imported.points(), clock.instant());
    imported.record(
        tx,
        placements,
        parts,
        some ->
            points.located(tx.sql(), some).stream()
                .collect(Collectors.toMap(PointStore.Located::point, PointStore.Located::subject)),
        judging,
        events);
    leaves.forEach(some -> some.endWhereExchanged(tx, placements, judging.allowances()));
    for (List<Long> some : Chunks.of(imported.points(), ImportedPlacements.AT_ONCE)) {
      standings.refresh(tx.sql(), some);
    }
  }

  /** What is believed to be fitted at the point at that moment, in chain order. */
  public List<Placed> at(DSLContext sql, long point, Instant moment) {
    return placements.at(sql, point, moment);
  }

  /** The tag a point is told by. */
  public String tag(DSLContext sql, long point) {
    return placements.tag(sql, point);
  }

  /** Everything believed now about the point, past and future. */
  public List<Placed> ofPoint(DSLContext sql, long point) {
    return placements.ofPoint(sql, point);
  }

  /** Where the component is believed to have been, oldest first. */
  public List<Placed> ofComponent(DSLContext sql, long component) {
    return placements.ofComponent(sql, component);
  }

  /** The same for several points at once, and for wherever these components were. */
  public List<Placed> ofAll(
      DSLContext sql, Collection<Long> ofPoints, Collection<Long> ofComponents) {
    return placements.ofAll(sql, ofPoints, ofComponents);
  }

  /** What happened to the loop, newest first. */
  public List<LoopEvent> events(DSLContext sql, long point) {
    return new ArrayList<>(events.ofPoint(sql, point));
  }
}
