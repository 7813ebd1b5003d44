package loopwright.concession;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.loop.Allowances;
import loopwright.loop.AsLeftFacts;
import loopwright.loop.Judging;
import loopwright.matching.Allowance;
import loopwright.matching.Verdict;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.web.Actor;
import loopwright.web.Permission;
import org.jooq.DSLContext;

/** Asks for concessions, decides on them, and says which stand. */
public final class Concessions implements Allowances {
  private final ConcessionStore store = new ConcessionStore();
  private final InstantSource clock;

  public Concessions(InstantSource clock) {
    this.clock = clock;
  }

  /**
   * Asks for one.
   *
   * @param judged the loop with the parts it is meant for
   * @throws Refused if nothing named is refused, or it would end before it begins or last too long
   */
  long ask(Tx tx, Asked asked, Judging.Judged judged, long askedBy) {
    refuseWhatIsNotRefused(asked.rules(), judged);
    Duration lasts = Duration.between(tx.at(), asked.expiresAt());
    if (lasts.isNegative() || lasts.isZero()) {
      throw new Refused(ConcessionProblem.ENDS_BEFORE);
    }
    if (lasts.compareTo(asked.kind().longest()) > 0) {
      throw new Refused(
          ConcessionProblem.TOO_LONG, asked.kind().word(), inWords(asked.kind().longest()));
    }
    return store.add(tx, asked, askedBy);
  }

  private static void refuseWhatIsNotRefused(List<String> rules, Judging.Judged judged) {
    if (rules.isEmpty()) {
      throw new Refused(ConcessionProblem.NO_RULE);
    }
    Set<String> refused =
        judged.judgement().againstAssembly().stream()
            .filter(finding -> finding.verdict() == Verdict.REFUSED)
            .map(finding -> finding.rule().name())
            .collect(Collectors.toSet());
    rules.stream()
        .filter(rule -> !refused.contains(rule))
        .findFirst()
        .ifPresent(
            rule -> {
              throw new Refused(ConcessionProblem.NOT_REFUSED, rule);
            });
  }

  private static String inWords(Duration longest) {
    return longest.toHours() <= 72 ? longest.toHours() + " hours" : longest.toDays() + " days";
  }

  /**
   * @throws Refused if the same person asked, or an engineer has to decide
   */
  void grant(Tx tx, Concession concession, Actor by, String note) {
    refuseUnlessWaiting(concession);
    refuseWrongPerson(concession, by);
    store.step(tx, concession, "granted", Long.valueOf(by.id()), note);
  }

  void decline(Tx tx, Concession concession, Actor by, String note) {
    refuseUnlessWaiting(concession);
    store.step(tx, concession, "declined", Long.valueOf(by.id()), note);
  }

  void withdraw(Tx tx, Concession concession, Actor by, String note) {
    if (!concession.standsAt(clock.instant())) {
      throw new Refused(
          ConcessionProblem.NOT_STANDING, concession.number(), concession.stateAt(clock.instant()));
    }
    store.step(tx, concession, "withdrawn", Long.valueOf(by.id()), note);
  }

  private void refuseUnlessWaiting(Concession concession) {
    if (!concession.waitsAt(clock.instant())) {
      throw new Refused(
          ConcessionProblem.NOT_WAITING, concession.number(), concession.stateAt(clock.instant()));
    }
  }

  private static void refuseWrongPerson(Concession concession, Actor by) {
    mayNotGrant(concession, by)
        .ifPresent(
            why -> {
              throw new Refused(why);
            });
  }

  /** Why that person can't grant it; empty when they can. */
  static Optional<ConcessionProblem> mayNotGrant(Concession concession, Actor by) {
    if (by.id().equals(Long.toString(concession.askedBy()))) {
      return Optional.of(ConcessionProblem.SAME_PERSON);
    }
    return concession.kind() == ConcessionKind.FULL && !by.may(Permission.DECIDE)
        ? Optional.of(ConcessionProblem.ENGINEER_DECIDES)
        : Optional.empty();
  }

  Concession one(DSLContext sql, long id) {
    return store.one(sql, id).orElseThrow(() -> new Refused(ConcessionProblem.NO_SUCH, "CN-" + id));
  }

  /** All of a point, newest first. */
  List<Concession> ofPoint(DSLContext sql, long point) {
    return store.ofPoints(sql, List.of(point));
  }

  List<Concession> newest(DSLContext sql, long before, int most) {
    return store.before(sql, before, most);
  }

  /** Those that wait for somebody to decide. */
  List<Concession> waiting(DSLContext sql) {
    Instant now = clock.instant();
    return store.open(sql, 500).stream().filter(concession -> concession.waitsAt(now)).toList();
  }

  @Override
  public Map<Long, Allowed> standing(
      DSLContext sql, Collection<AsLeftFacts.Fitted> loops, Viewpoint viewpoint) {
    Instant at = viewpoint.at();
    Map<Long, String> fitted = new HashMap<>();
    loops.forEach(loop -> fitted.put(loop.point(), loop.fingerprint()));
    Map<Long, Allowed> standing = new HashMap<>();
    store.ofPoints(sql, fitted.keySet(), viewpoint.known()).stream()
        .filter(concession -> concession.standsAt(at))
        .filter(concession -> concession.fingerprint().equals(fitted.get(concession.point())))
        .collect(Collectors.groupingBy(Concession::point))
        .forEach((point, stand) -> standing.put(point, allowed(stand, at)));
    return standing;
  }

  private static Allowed allowed(List<Concession> standing, Instant at) {
    return new Allowed(
        standing.stream().map(Concessions::allowance).toList(),
        standing.stream().anyMatch(concession -> concession.soonEnds(at)),
        standing.stream()
            .map(concession -> reviewAt(concession, at))
            .min(Instant::compareTo)
            .orElse(null));
  }

  private static Instant reviewAt(Concession concession, Instant at) {
    return concession.soonEnds(at)
        ? concession.endsAt()
        : concession.endsAt().minus(Concession.NOTICE);
  }

  private static Allowance allowance(Concession concession) {
    return new Allowance(
        concession.number(),
        Set.copyOf(concession.rules()),
        "until %s (UTC); meanwhile: %s"
            .formatted(
                SiteMoment.shown(concession.expiresAt(), ZoneOffset.UTC), concession.measure()));
  }

  @Override
  public void exchanged(Tx tx, long point, String before) {
    store.ofPoints(tx.sql(), List.of(point)).stream()
        .filter(concession -> concession.standsAt(clock.instant()))
        .filter(concession -> concession.fingerprint().equals(before))
        .forEach(concession -> store.step(tx, concession, "exchanged", null, tx.act().reason()));
  }
}
