package loopwright.closeout;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.bypass.Bypasses;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.loop.Allowances;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.matching.Finding;
import loopwright.outage.Closing;
import loopwright.outage.Outage;
import loopwright.outage.OutageState;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.pack.Packs;
import loopwright.pack.Returned;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Says what an outage came to, closes it, and carries over what is left. */
public final class CloseOuts {
  private final Outages outages;
  private final Packs packs;
  private final Judging judging;
  private final Configuration configuration;
  private final Bypasses bypasses;
  private final List<Closing> told;
  private final InstantSource clock;

  /**
   * @param told when an outage is closed
   */
  public CloseOuts(
      Outages outages,
      Packs packs,
      Judging judging,
      Configuration configuration,
      Bypasses bypasses,
      List<Closing> told,
      InstantSource clock) {
    this.outages = outages;
    this.packs = packs;
    this.judging = judging;
    this.configuration = configuration;
    this.bypasses = bypasses;
    this.told = List.copyOf(told);
    this.clock = clock;
  }

  Outages outages() {
    return outages;
  }

  CloseOut of(DSLContext sql, Outage outage) {
    Map<Long, Returned> latest = packs.latest(sql, outage);
    List<ScopeLine> scope = outages.scope(sql, outage.id());
    Map<Long, Judging.Judged> judged = new HashMap<>();
    for (List<ScopeLine> some : Chunks.of(scope, 500)) {
      List<Judging.Subject> subjects =
          some.stream().map(line -> new Judging.Subject(line.point(), line.tag())).toList();
      judging
          .judge(sql, subjects, clock.instant())
          .forEach(one -> judged.put(one.subject().point(), one));
    }
    Instant since = outage.step(OutageState.ISSUED).map(Outage.Step::at).orElse(clock.instant());
    return new CloseOut(
        outage,
        scope.stream()
            .map(
                line ->
                    loop(
                        sql,
                        outage,
                        line,
                        latest.get(line.point()),
                        judged.get(line.point()),
                        since))
            .toList(),
        bypasses(sql, outage));
  }

  private CloseOut.LoopLine loop(
      DSLContext sql,
      Outage outage,
      ScopeLine line,
      @Nullable Returned returned,
      Judging.@Nullable Judged judged,
      Instant since) {
    return new CloseOut.LoopLine(
        line.point(),
        line.tag(),
        returned == null ? CloseOut.LoopLine.NOTHING_SAID : returned.outcome(),
        returned == null ? "" : returned.reason(),
        returned == null ? "" : returned.told(),
        returned == null
            ? List.of()
            : Stream.of(returned.foundCalibration(), returned.leftCalibration())
                .filter(number -> !number.isEmpty())
                .toList(),
        judged == null ? "" : judged.judgement().verdict().word(),
        judged == null
            ? List.of()
            : judged.judgement().againstReturnToService().stream().map(Finding::sentences).toList(),
        changes(sql, outage, line.point(), since),
        judged == null ? List.of() : concessions(judged),
        EnumSet.copyOf(line.works()));
  }

  private List<String> changes(DSLContext sql, Outage outage, long point, Instant since) {
    return configuration.events(sql, point).stream()
        .filter(event -> !event.enteredAt().isBefore(since))
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
    CloseOut now = of(tx.sql(), outage);
    List<String> open =
        now.loops().stream().filter(CloseOut.LoopLine::isOpen).map(CloseOut.LoopLine::tag).toList();
    if (!open.isEmpty()) {
      throw new Refused(CloseOutProblem.STILL_OPEN, String.join(", ", open));
    }
    now.loops().stream()
        .filter(loop -> loop.isDone() && !loop.against().isEmpty())
        .findFirst()
        .ifPresent(
            loop -> {
              throw new Refused(
                  CloseOutProblem.NOT_IN_SERVICE, loop.tag(), String.join(" ", loop.against()));
            });
    told.forEach(watch -> watch.closing(tx, outage));
    outages.moveOn(tx, id, OutageState.CLOSED, person, note);
  }

  /**
   * Takes everything that is not done into another outage, with the reason why.
   *
   * @return how many loops were new there
   */
  int carryOver(Tx tx, long from, long to) {
    Outage outage = outages.one(tx.sql(), from);
    Outage next = outages.one(tx.sql(), to);
    if (from == to || next.isClosed()) {
      throw new Refused(CloseOutProblem.CARRY_WHERE);
    }
    List<CloseOut.LoopLine> left = of(tx.sql(), outage).toCarry();
    if (left.isEmpty()) {
      throw new Refused(CloseOutProblem.NOTHING_TO_CARRY);
    }
    Set<Long> there = new HashSet<>();
    outages.scope(tx.sql(), to).forEach(line -> there.add(line.point()));
    int fresh = 0;
    for (CloseOut.LoopLine loop : left) {
      if (there.add(loop.point())) {
        String why = loop.reason().isEmpty() ? "" : ": " + loop.reason();
        outages.take(
            tx,
            to,
            List.of(loop.point()),
            loop.works(),
            "carried over from %s, %s%s".formatted(outage.number(), loop.outcome(), why));
        fresh++;
      }
    }
    return fresh;
  }
}
