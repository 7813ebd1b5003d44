package loopwright.standard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** The register of measuring equipment. */
public final class Standards {
  private final StandardStore store = new StandardStore();
  private final TraceStore traces = new TraceStore();

  /**
   * Adds one, without a certificate yet.
   *
   * @throws Refused {@link StandardProblem#CODE_TAKEN}
   */
  public long add(Tx tx, Standard fresh) {
    store
        .coded(tx.sql(), fresh.code())
        .ifPresent(
            other -> {
              throw new Refused(StandardProblem.CODE_TAKEN, other.code(), other.inWords());
            });
    return store.add(tx, fresh);
  }

  /**
   * Adds a certificate.
   *
   * @param today on the shop's calendar
   * @return its number
   * @throws Refused if it is of the future, on record already, or has ranges that can't be
   */
  public long add(Tx tx, Standard standard, Certificate fresh, LocalDate today) {
    if (fresh.issuedOn().isAfter(today)) {
      throw new Refused(StandardProblem.ISSUED_IN_FUTURE, fresh.issuedOn(), today);
    }
    refuseRanges(standard.kind(), fresh);
    boolean known =
        standard.certificates().stream()
            .anyMatch(c -> c.number().equals(fresh.number()) && c.issuer().equals(fresh.issuer()));
    if (known) {
      throw new Refused(StandardProblem.CERTIFICATE_TAKEN, fresh.number(), fresh.issuer());
    }
    return store.add(tx, standard.id(), fresh);
  }

  /**
   * The same of a working standard that was calibrated against another standard of the shop.
   *
   * @throws Refused also if that is itself, or had no certificate that day
   */
  public long add(Tx tx, Standard standard, Certificate fresh, LocalDate today, Standard against) {
    Certificate inForce = inForce(standard, against, fresh.issuedOn());
    long certificate = add(tx, standard, fresh, today);
    traces.ofCertificate(tx, certificate, inForce.id());
    return certificate;
  }

  private static Certificate inForce(Standard standard, Standard against, LocalDate day) {
    if (standard.id() == against.id()) {
      throw new Refused(StandardProblem.AGAINST_ITSELF, standard.code());
    }
    return against
        .certificateOf(day)
        .orElseThrow(() -> new Refused(StandardProblem.REFERENCE_WITHOUT, against.code(), day));
  }

  /** Against what working standards were calibrated and checked, in the order entered. */
  public List<Trace> traces(DSLContext sql) {
    return traces.all(sql);
  }

  private static void refuseRanges(StandardKind kind, Certificate fresh) {
    if (kind.units().isEmpty() != fresh.ranges().isEmpty()) {
      throw new Refused(
          fresh.ranges().isEmpty() ? StandardProblem.NO_RANGE : StandardProblem.RANGES_OF_OTHER);
    }
  }

  /**
   * Adds an event.
   *
   * @throws Refused {@link StandardProblem#EVENT_IN_FUTURE}
   */
  public long add(Tx tx, Standard standard, StandardEvent event, LocalDate today) {
    if (event.on().isAfter(today)) {
      throw new Refused(StandardProblem.EVENT_IN_FUTURE, event.on());
    }
    return store.add(tx, standard.id(), event);
  }

  /** The same of one that was checked against another standard of the shop. */
  public void add(
      Tx tx, Standard standard, StandardEvent event, LocalDate today, Standard against) {
    Certificate inForce = inForce(standard, against, event.on());
    traces.ofEvent(tx, add(tx, standard, event, today), inForce.id());
  }

  /** All, by code. */
  public List<Standard> all(DSLContext sql) {
    return store.all(sql);
  }

  public Optional<Standard> find(DSLContext sql, String code) {
    return store.coded(sql, code);
  }

  /**
   * The one with that code.
   *
   * @throws Refused {@link StandardProblem#NO_SUCH}
   */
  public Standard coded(DSLContext sql, String code) {
    return find(sql, code).orElseThrow(() -> new Refused(StandardProblem.NO_SUCH, code));
  }

  /** Standards with the certificate that a record names. */
  public List<StandardUsed> used(DSLContext sql, Collection<Long> certificates) {
    if (certificates.isEmpty()) {
      return List.of();
    }
    return store.withCertificates(sql, certificates).stream()
        .flatMap(
            standard ->
                standard.certificates().stream()
                    .filter(certificate -> certificates.contains(certificate.id()))
                    .map(certificate -> new StandardUsed(standard, certificate)))
        .toList();
  }
}
