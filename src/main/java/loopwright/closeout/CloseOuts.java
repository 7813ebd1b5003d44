package loopwright.closeout;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.bypass.Bypasses;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.loop.Allowances;
import loopwright.loop.Configuration;
import loopwright.loop.Content;
import loopwright.loop.Judging;
import loopwright.matching.Finding;
import loopwright.outage.Closing;
import loopwright.outage.Emergent;
import loopwright.outage.Outage;
import loopwright.outage.OutageState;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.pack.Packs;
import loopwright.pack.Returned;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.spare.Reserved;
import loopwright.temporary.TemporaryFits;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Says what an outage came to, closes it, and carries over what is left. */
public final class CloseOuts {
  private static final int MOST_TOLD = 12;
  private static final int MOST_REASON = 2_000;

  private final Outages outages;
  private final Packs packs;
  private final Judging judging;
  private final Configuration configuration;
  private final Bypasses bypasses;
  private final FoundOutOfTolerance found;
  private final TemporaryFits temporaryFits;
  private final List<Closing> told;
  private final InstantSource clock;

  /**
   * @param found what as-founds did to protection
   * @param told when an outage is closed
   */
  public CloseOuts(
      Outages outages,
      Packs packs,
      Judging judging,
      Configuration configuration,
      Bypasses bypasses,
      FoundOutOfTolerance found,
      TemporaryFits temporaryFits,
      List<Closing> told,
      InstantSource clock) {
    this.outages = outages;
    this.packs = packs;
    this.judging = judging;
    this.configuration = configuration;
    this.bypasses = bypasses;
    this.found = found;
    this.temporaryFits = temporaryFits;
    this.told = List.copyOf(told);
    this.clock = clock;
  }

  Outages outages() {
    return outages;
  }

  /** Once it is closed, as it was then; later work belongs to later outages. */
  CloseOut of(DSLContext sql, Outage outage, UnitsShown units) {
    Optional<Instant> closed = outage.step(OutageState.CLOSED).map(Outage.Step::at);
    Instant until = closed.orElse(clock.instant());
    List<ScopeLine> scope = outages.scope(sql, outage.id());
    Instant since = outage.step(OutageState.ISSUED).map(Outage.Step::at).orElse(until);
    Facts facts =
        new Facts(
            packs.latest(sql, outage),
            judged(sql, scope, closed),
            Reserved.ofOutage(sql, outage.id()),
            outages.emergent(sql, outage.id()),
            temporaryFits.stillIn(sql, scope.stream().map(ScopeLine::point).toList(), until),
            since,
            until,
            units);
    return new CloseOut(
        outage,
        scope.stream().map(line -> loop(sql, outage, line, facts)).toList(),
        bypasses(sql, outage));
  }

  /** What is asked for all loops at once. */
  private record Facts(
      Map<Long, Returned> latest,
      Map<Long, Judging.Judged> judged,
      List<Reserved> spares,
      List<Emergent> emergent,
      Map<Long, List<String>> temporary,
      Instant since,
      Instant until,
      UnitsShown units) {}

  private Map<Long, Judging.Judged> judged(
      DSLContext sql, List<ScopeLine> scope, Optional<Instant> closed) {
    Map<Long, Judging.Judged> judged = new HashMap<>();
    for (List<ScopeLine> some : Chunks.of(scope, 500)) {
      List<Judging.Subject> subjects =
          some.stream().map(line -> new Judging.Subject(line.point(), line.tag())).toList();
      closed
          .map(at -> judging.judge(sql, subjects, Viewpoint.of(at)))
          .orElseGet(() -> judging.judge(sql, subjects, clock.instant()))
          .forEach(one -> judged.put(one.subject().point(), one));
    }
    return judged;
  }

  private CloseOut.LoopLine loop(DSLContext sql, Outage outage, ScopeLine line, Facts facts) {
    Returned returned = facts.latest().get(line.point());
    Judging.Judged judged = facts.judged().get(line.point());
    List<String> calibrations =
        returned == null
            ? List.of()
            : Stream.of(returned.foundCalibration(), returned.leftCalibration())
                .filter(number -> !number.isEmpty())
                .toList();
    return new CloseOut.LoopLine(
        line.point(),
        line.tag(),
        returned == null ? CloseOut.LoopLine.NOTHING_SAID : returned.outcome(),
        returned == null ? "" : returned.reason(),
        returned == null ? "" : returned.told(),
        calibrations,
        found.during(sql, outage, line.point(), calibrations, facts.until(), facts.units()),
        facts.spares().stream()
            .filter(spare -> spare.point() == line.point())
            .map(spare -> spare.words() + (isIn(judged, spare) ? ", fitted" : ", not used here"))
            .distinct()
            .toList(),
        judged == null ? "" : judged.judgement().verdict().word(),
        judged == null
            ? List.of()
            : judged.judgement().againstReturnToService().stream().map(Finding::sentences).toList(),
        changes(sql, outage, line.point(), facts),
        judged == null ? List.of() : concessions(judged),
        EnumSet.copyOf(line.works()),
        facts.emergent().stream()
            .filter(one -> one.point() == line.point())
            .map(one -> one.inWords(outage.zone()))
            .toList(),
        facts.temporary().getOrDefault(line.point(), List.of()),
        returned == null ? "" : returned.choice());
  }

  private static boolean isIn(Judging.@Nullable Judged judged, Reserved spare) {
    return judged != null
        && judged.chain().stream()
            .anyMatch(
                placed ->
                    placed.content() instanceof Content.Part part
                        && part.number() == spare.component());
  }

  private List<String> changes(DSLContext sql, Outage outage, long point, Facts facts) {
    return configuration.events(sql, point).stream()
        .filter(event -> !event.enteredAt().isBefore(facts.since()))
        .filter(event -> !event.enteredAt().isAfter(facts.until()))
        .map(
            event ->
                "%s of %s%s"
                    .formatted(
                        Text.capital(event.kind()),
                        SiteMoment.shown(event.happenedAt(), outage.zone()),
                        event.verdict() == null ? "" : ": " + event.verdict()))
        .toList();
  }

  private static List<String> concessions(Judging.Judged judged) {
    Allowances.Allowed allowed = judged.allowed();
    return allowed == null
        ? List.of()
        : allowed.allowances().stream().map(one -> one.number() + " " + one.terms()).toList();
  }

  private List<CloseOut.BypassLine> bypasses(DSLContext sql, Outage outage) {
    Instant now = clock.instant();
    return bypasses.ofOutage(sql, outage.id()).stream()
        .sorted(Comparator.comparing(bypass -> !bypass.isOpen()))
        .map(
            bypass ->
                new CloseOut.BypassLine(
                    bypass.number(),
                    bypass.href(),
                    "%s, %s: %s; %s; %s answers for it"
                        .formatted(
                            bypass.tag(),
                            bypass.siteNumber(),
                            bypass.inhibited(),
                            bypass.stateAt(now),
                            bypass.ownerNow()),
                    bypass.isOpen()))
        .toList();
  }

  /**
   * Closes it; what was put aside is free again.
   *
   * @throws Refused if nothing is said of a loop, or one that is done may not go back to service
   */
  void close(Tx tx, long id, long person, String note) {
    outages.hold(tx, id);
    Outage outage = outages.one(tx.sql(), id);
    Outages.refuseClosed(outage);
    if (outage.state() != OutageState.UNDER_WAY) {
      throw new Refused(CloseOutProblem.NOT_BEGUN, outage.number(), outage.state().word());
    }
    CloseOut now = of(tx.sql(), outage, UnitsShown.METRIC);
    List<String> open =
        now.loops().stream().filter(CloseOut.LoopLine::isOpen).map(CloseOut.LoopLine::tag).toList();
    if (!open.isEmpty()) {
      throw new Refused(CloseOutProblem.STILL_OPEN, String.join(", ", open));
    }
    refuseNotInService(now);
    told.forEach(watch -> watch.closing(tx, outage));
    outages.moveOn(tx, id, OutageState.CLOSED, person, note);
  }

  /** All of them are named, each with why. */
  private static void refuseNotInService(CloseOut now) {
    List<CloseOut.LoopLine> against =
        now.loops().stream().filter(CloseOut.LoopLine::isBlocked).toList();
    if (!against.isEmpty()) {
      throw new Refused(
          CloseOutProblem.NOT_IN_SERVICE,
          against.stream().map(CloseOut.LoopLine::tag).collect(Collectors.joining(", ")),
          against.stream()
              .limit(MOST_TOLD)
              .map(loop -> loop.tag() + ": " + String.join(" ", loop.against()))
              .collect(Collectors.joining(" ")));
    }
  }

  /**
   * What was carried over.
   *
   * @param loops new there
   * @param elsewhere tags of loops that the other outage's trains don't hold
   */
  record Carried(int loops, List<String> elsewhere) {
    Carried {
      elsewhere = List.copyOf(elsewhere);
    }
  }

  /**
   * Takes everything that is not done into another outage, with the reason why.
   *
   * @throws Refused where nothing is left, or the other outage holds none of its trains
   */
  Carried carryOver(Tx tx, long from, long to) {
    outages.hold(tx, to);
    Outage outage = outages.one(tx.sql(), from);
    Outage next = outages.one(tx.sql(), to);
    if (from == to || next.isClosed()) {
      throw new Refused(CloseOutProblem.CARRY_WHERE);
    }
    List<CloseOut.LoopLine> left = of(tx.sql(), outage, UnitsShown.METRIC).toCarry();
    if (left.isEmpty()) {
      throw new Refused(CloseOutProblem.NOTHING_TO_CARRY);
    }
    Set<Long> standing = new HashSet<>();
    outages.loops(tx.sql(), next).forEach(loop -> standing.add(loop.point().id().number()));
    List<String> elsewhere =
        left.stream()
            .filter(loop -> !standing.contains(loop.point()))
            .map(CloseOut.LoopLine::tag)
            .toList();
    if (elsewhere.size() == left.size()) {
      throw new Refused(CloseOutProblem.OTHER_TRAINS, next.number(), String.join(", ", elsewhere));
    }
    Set<Long> there = new HashSet<>();
    outages.scope(tx.sql(), to).forEach(line -> there.add(line.point()));
    int fresh = 0;
    for (CloseOut.LoopLine loop : left) {
      if (standing.contains(loop.point()) && there.add(loop.point())) {
        outages.take(tx, to, List.of(loop.point()), loop.works(), why(outage, loop));
        fresh++;
      }
    }
    return new Carried(fresh, elsewhere);
  }

  private static String why(Outage outage, CloseOut.LoopLine loop) {
    String reason = loop.reason().isEmpty() ? "" : ": " + loop.reason();
    String why = "carried over from %s, %s%s".formatted(outage.number(), loop.outcome(), reason);
    return why.length() <= MOST_REASON ? why : why.substring(0, MOST_REASON - 1) + "…";
  }
}
