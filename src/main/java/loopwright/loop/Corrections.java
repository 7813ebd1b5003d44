package loopwright.loop;

import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import org.jooq.DSLContext;

/**
 * Repairs the record of what was fitted. What was believed before stays readable as known then;
 * calibrations stay with the combination that they were recorded with.
 */
public final class Corrections {
  private final PlacementStore placements = new PlacementStore();
  private final PlacementHistoryStore history = new PlacementHistoryStore();
  private final EventStore events = new EventStore();
  private final PointStore points = new PointStore();
  private final DisputeStore disputes = new DisputeStore();
  private final PartFacts parts;
  private final Judging judging;
  private final Standings standings;
  private final InstantSource clock;

  public Corrections(PartFacts parts, Judging judging, Standings standings, InstantSource clock) {
    this.parts = parts;
    this.judging = judging;
    this.standings = standings;
    this.clock = clock;
  }

  /**
   * Corrects what is on record over a range of moments, and decides disputes about the slot within
   * it.
   *
   * @return how the loop is judged now
   * @throws Refused if a moment is in the future, the part is on record elsewhere in that time, or
   *     the record says so already
   */
  public Judging.Judged correct(Tx tx, Correction correction) {
    List<Long> named = correction.content().component().stream().boxed().toList();
    placements.holdStill(tx.sql(), correction.point(), named);
    PointStore.Located located = points.located(tx.sql(), correction.point());
    CorrectionPlan plan = look(tx.sql(), correction);
    List<Dispute> decided = decided(tx.sql(), correction);
    Set<Long> touched = new TreeSet<>(List.of(correction.point()));
    decided.forEach(dispute -> touched.add(dispute.claimBeside(correction.point()).point()));
    Instant from = correction.span().from();
    List<Leaves> leaves =
        Leaves.at(tx.sql(), placements, judging.allowances(), touched, from, clock.instant());
    write(tx, plan);
    decided.forEach(dispute -> settle(tx, dispute, correction));
    leaves.forEach(some -> some.endWhereExchanged(tx, placements, judging.allowances()));
    tell(tx, plan, located);
    standings.refresh(tx.sql(), touched);
    return judging.judge(tx.sql(), List.of(located.subject()), clock.instant()).get(0);
  }

  private void write(Tx tx, CorrectionPlan plan) {
    if (!plan.changesNothing()) {
      placements.rewrite(tx, plan.retired(), plan.taken());
      parts.placementsChanged(tx, plan.components());
    }
  }

  private void refuseFuture(Span span) {
    Instant latest = span.isOpen() ? span.from() : span.until();
    if (latest.isAfter(clock.instant())) {
      throw new Refused(LoopProblem.IN_FUTURE, latest);
    }
  }

  private void refuseElsewhere(DSLContext sql, CorrectionPlan plan, ZoneId zone) {
    plan.inTheWay()
        .ifPresent(
            other -> {
              throw new Refused(
                  LoopProblem.OVERLAP,
                  Text.capital(
                      StayWords.of(sql, parts, List.of(other), zone).named(other.content())),
                  where(sql, other, zone));
            });
  }

  /** Where a stay is on record, from when to when, and by which change. */
  private String where(DSLContext sql, Placed stay, ZoneId zone) {
    PlacementHistory.Entered made = history.made(sql, stay);
    return "%s, %s, %s (%s by %s, entered on %s: %s)"
        .formatted(
            placements.tag(sql, stay.point()),
            Words.usual(stay.slot()),
            new StayWords(Map.of(), zone).span(stay.span()),
            made.what(),
            made.by(),
            SiteMoment.shown(made.at(), zone),
            made.reason());
  }

  /** The disputes about this slot that the correction decides. */
  List<Dispute> decided(DSLContext sql, Correction correction) {
    return disputes.openAt(sql, List.of(correction.point())).stream()
        .filter(dispute -> dispute.claims(correction.point(), correction.slot()))
        .filter(dispute -> correction.span().contains(dispute.at()))
        .toList();
  }

  /** Where the claim that stood on record gives way, the other one takes its place. */
  private void settle(Tx tx, Dispute dispute, Correction correction) {
    disputes.settle(tx, dispute);
    boolean givesWay =
        dispute.standing().isAt(correction.point(), correction.slot())
            && !correction.content().equals(dispute.part());
    if (givesWay) {
      otherClaim(tx.sql(), dispute)
          .map(claim -> CorrectionPlan.of(placements, tx.sql(), claim))
          .filter(plan -> plan.inTheWay().isEmpty())
          .ifPresent(plan -> stand(tx, dispute, plan));
    }
  }

  private void stand(Tx tx, Dispute dispute, CorrectionPlan plan) {
    write(tx, plan);
    events.add(
        tx,
        plan.correction().point(),
        "correction",
        dispute.at(),
        null,
        "What was found here stands: the serial was misread at %s."
            .formatted(dispute.standing().tag()));
  }

  /** What the later claim says, as far as nothing is known of slot and part meanwhile. */
  private Optional<Correction> otherClaim(DSLContext sql, Dispute dispute) {
    Dispute.Claim other = dispute.other();
    Instant next = placements.nextOfPart(sql, dispute.part(), dispute.at());
    return placements.at(sql, other.point(), dispute.at()).stream()
        .filter(placed -> placed.slot() == other.slot())
        .filter(placed -> placed.content() instanceof Content.Unknown)
        .map(placed -> placed.span().until())
        .map(until -> new Span(dispute.at(), next.isBefore(until) ? next : until))
        .map(span -> new Correction(other.point(), other.slot(), dispute.part(), span))
        .findFirst();
  }

  private void tell(Tx tx, CorrectionPlan plan, PointStore.Located located) {
    Correction correction = plan.correction();
    Instant from = correction.span().from();
    Judging.Judged then = judging.judge(tx.sql(), List.of(located.subject()), from).get(0);
    List<Placed> all = new ArrayList<>(plan.retired());
    all.addAll(plan.taken());
    StayWords words = StayWords.of(tx.sql(), parts, all, located.zone());
    events.add(tx, located.point(), "correction", from, then.judgement(), words.corrected(plan));
  }

  /**
   * What a correction would change.
   *
   * @throws Refused as {@link #correct}
   */
  CorrectionPlan look(DSLContext sql, Correction correction) {
    refuseFuture(correction.span());
    PointStore.Located located = points.located(sql, correction.point());
    CorrectionPlan plan = CorrectionPlan.of(placements, sql, correction);
    refuseElsewhere(sql, plan, located.zone());
    if (plan.changesNothing() && decided(sql, correction).isEmpty()) {
      throw new Refused(LoopProblem.SAID_ALREADY, located.tag(), Words.usual(correction.slot()));
    }
    return plan;
  }

  /** Everything believed of the point now, with the changes that it came with. */
  Map<Long, PlacementHistory.Entered> made(DSLContext sql, List<Placed> stays) {
    return history.made(sql, stays);
  }
}
