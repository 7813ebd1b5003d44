package loopwright.signing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.db.Tx;
import loopwright.people.Person;
import loopwright.problem.Refused;
import loopwright.standard.StandardUsed;
import loopwright.standard.Standards;
import loopwright.web.Actor;
import org.jooq.DSLContext;

/** Signs and reviews calibrations, and says what stands in the way. */
public final class Signing {
  private final SigningStore store = new SigningStore();
  private final Calibrations calibrations;
  private final Standards standards;

  public Signing(Calibrations calibrations, Standards standards) {
    this.calibrations = calibrations;
    this.standards = standards;
  }

  /**
   * Two days on the site's calendar.
   *
   * @param measured when the calibration was taken
   */
  record Days(LocalDate measured, LocalDate today) {}

  /** Signatures under a calibration, the technician's first. */
  public List<Signature> signatures(DSLContext sql, Calibrated c) {
    return store.signatures(sql, c.id());
  }

  /** How far each of many records is signed, in a word or two. */
  Map<Long, String> marks(DSLContext sql, List<Calibrated> records) {
    Map<Long, List<Signature>> signed =
        store.signatures(sql, records.stream().map(Calibrated::id).toList());
    return records.stream()
        .collect(
            Collectors.toMap(Calibrated::id, c -> mark(c, signed.getOrDefault(c.id(), List.of()))));
  }

  private static String mark(Calibrated c, List<Signature> signatures) {
    if (signatures.isEmpty()) {
      return c.origin().equals("entered") ? "unsigned" : "imported, unsigned";
    }
    return as(signatures, Signature.REVIEWER).isPresent() ? "signed, reviewed" : "signed";
  }

  private static Optional<Signature> as(List<Signature> signatures, String role) {
    return signatures.stream().filter(s -> s.role().equals(role)).findFirst();
  }

  /** Why the reader can't sign it as the one who took it; empty when they can. */
  List<Refused> againstSigning(DSLContext sql, Calibrated c, Actor signer, Days days) {
    List<Refused> against = new ArrayList<>();
    common(sql, c, against);
    as(signatures(sql, c), Signature.TECHNICIAN)
        .ifPresent(s -> against.add(refused(SigningProblem.ALREADY_SIGNED, c, s.name())));
    if (!tookIt(sql, c, signer)) {
      against.add(
          new Refused(SigningProblem.SOMEBODY_ELSES, c.number(), c.performedBy(), signer.name()));
    }
    for (LocalDate day : List.of(days.measured(), days.today())) {
      if (authorisation(sql, signer, Scope.SIGN, day).isEmpty()) {
        against.add(new Refused(SigningProblem.NOT_AUTHORISED, "sign calibrations", day));
        break;
      }
    }
    used(sql, c)
        .forEach(used -> lateOrUnfit(sql, used, days.measured(), signer).ifPresent(against::add));
    return against;
  }

  /**
   * By name, as the record says; and where the one who took it entered it too, by that very
   * account, whatever it is called since.
   */
  private boolean tookIt(DSLContext sql, Calibrated c, Actor signer) {
    Map.Entry<Optional<Long>, String> entered = store.entered(sql, c.id());
    boolean enteredItself = entered.getValue().equals(c.performedBy());
    return enteredItself && entered.getKey().isPresent()
        ? entered.getKey().get().toString().equals(signer.id())
        : c.performedBy().equals(signer.name());
  }

  private void common(DSLContext sql, Calibrated c, List<Refused> against) {
    if (!c.origin().equals("entered")) {
      against.add(new Refused(SigningProblem.IMPORTED, c.number()));
    }
    calibrations
        .superseded(sql, c)
        .ifPresent(s -> against.add(new Refused(SigningProblem.SUPERSEDED, c.number(), s.by())));
  }

  private static Refused refused(SigningProblem problem, Calibrated c, String who) {
    return new Refused(problem, c.number(), who);
  }

  private List<StandardUsed> used(DSLContext sql, Calibrated c) {
    return standards.used(sql, calibrations.certificates(sql, c));
  }

  private Optional<Refused> lateOrUnfit(
      DSLContext sql, StandardUsed used, LocalDate day, Actor signer) {
    boolean late = used.certificate().overdueOn(day);
    if ((!late && !used.standard().unfitOn(day)) || covering(sql, used, day, signer).isPresent()) {
      return Optional.empty();
    }
    String code = used.standard().code();
    return Optional.of(
        late
            ? new Refused(SigningProblem.STANDARD_LATE, code, day, used.certificate().dueOn())
            : new Refused(SigningProblem.STANDARD_UNFIT, code, day));
  }

  private Optional<StandardConcession> covering(
      DSLContext sql, StandardUsed used, LocalDate day, Actor signer) {
    long certificate = used.certificate().id();
    return store.concessions(sql, List.of(certificate)).stream()
        .filter(each -> each.covers(certificate, day, Long.parseLong(signer.id())))
        .findFirst();
  }

  private Optional<Authorisation> authorisation(
      DSLContext sql, Actor person, Scope scope, LocalDate day) {
    return store.of(sql, Long.parseLong(person.id()), scope).stream()
        .filter(each -> each.holdsOn(day))
        .findFirst();
  }

  /** Why the reader can't review it; empty when they can. */
  List<Refused> againstReview(DSLContext sql, Calibrated c, Actor reviewer, Days days) {
    List<Refused> against = new ArrayList<>();
    common(sql, c, against);
    List<Signature> signatures = signatures(sql, c);
    as(signatures, Signature.REVIEWER)
        .ifPresent(s -> against.add(refused(SigningProblem.ALREADY_REVIEWED, c, s.name())));
    Optional<Signature> signed = as(signatures, Signature.TECHNICIAN);
    if (signed.isEmpty()) {
      against.add(new Refused(SigningProblem.NOT_SIGNED_YET, c.number()));
    }
    signed
        .filter(s -> Long.toString(s.person()).equals(reviewer.id()))
        .ifPresent(s -> against.add(new Refused(SigningProblem.SAME_PERSON, c.number())));
    signed
        .filter(s -> !s.hash().equals(calibrations.contentHash(sql, c)))
        .ifPresent(s -> against.add(new Refused(SigningProblem.CHANGED)));
    if (authorisation(sql, reviewer, Scope.REVIEW, days.today()).isEmpty()) {
      against.add(new Refused(SigningProblem.NOT_AUTHORISED, "review calibrations", days.today()));
    }
    return against;
  }

  /**
   * Signs as the one who took it.
   *
   * @throws Refused the first reason against it
   */
  void sign(Tx tx, Calibrated c, Actor signer, Days days) {
    calibrations.holdStill(tx, c);
    refuse(againstSigning(tx.sql(), c, signer, days));
    String concessions =
        used(tx.sql(), c).stream()
            .filter(
                u ->
                    u.certificate().overdueOn(days.measured())
                        || u.standard().unfitOn(days.measured()))
            .flatMap(u -> covering(tx.sql(), u, days.measured(), signer).stream())
            .map(each -> "SC-" + each.id())
            .collect(Collectors.joining(", "));
    add(tx, c, signer, Signature.TECHNICIAN, Scope.SIGN, days.today(), concessions);
  }

  /**
   * Reviews what another person signed.
   *
   * @throws Refused the first reason against it
   */
  void review(Tx tx, Calibrated c, Actor reviewer, Days days) {
    calibrations.holdStill(tx, c);
    refuse(againstReview(tx.sql(), c, reviewer, days));
    add(tx, c, reviewer, Signature.REVIEWER, Scope.REVIEW, days.today(), "");
  }

  /** The sentence with its code. */
  static String said(Refused refused) {
    return refused.getMessage() + " (" + refused.problem().code() + ")";
  }

  private static void refuse(List<Refused> against) {
    if (!against.isEmpty()) {
      throw against.get(0);
    }
  }

  private void add(
      Tx tx,
      Calibrated c,
      Actor signer,
      String role,
      Scope scope,
      LocalDate today,
      String concessions) {
    Authorisation by = authorisation(tx.sql(), signer, scope, today).orElseThrow();
    Instant at = tx.at();
    store.add(
        tx,
        new Signature(
            c.id(),
            role,
            Long.parseLong(signer.id()),
            signer.name(),
            at,
            by.id(),
            by.basis(),
            calibrations.contentHash(tx.sql(), c),
            concessions));
  }

  List<Authorisation> authorisations(DSLContext sql) {
    return store.all(sql);
  }

  /**
   * @throws Refused if it would end before it begins, or the granter is the person
   */
  void authorise(Tx tx, Person person, Authorisation fresh, Actor by) {
    if (by.id().equals(person.id())) {
      throw new Refused(SigningProblem.OWN_AUTHORISATION);
    }
    if (!fresh.from().isBefore(fresh.until())) {
      throw new Refused(SigningProblem.DATES, fresh.until(), fresh.from());
    }
    store.add(tx, fresh, Long.parseLong(by.id()));
  }

  void end(Tx tx, long authorisation, LocalDate on, String reason) {
    Authorisation found =
        store.all(tx.sql()).stream()
            .filter(each -> each.id() == authorisation)
            .findFirst()
            .orElseThrow(() -> new Refused(SigningProblem.ENDED));
    if (found.endedOn() != null || !found.until().isAfter(on)) {
      throw new Refused(SigningProblem.ENDED);
    }
    store.end(tx, authorisation, on, reason);
  }

  List<StandardConcession> concessions(DSLContext sql, List<Long> certificates) {
    return store.concessions(sql, certificates);
  }

  long permit(Tx tx, StandardConcession fresh) {
    return store.add(tx, fresh);
  }

  /** Numbers of calibrations signed but not reviewed, newest first. */
  List<String> notReviewed(DSLContext sql, int most) {
    return store.notReviewed(sql, most);
  }
}
