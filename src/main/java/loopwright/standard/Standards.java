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
  public void add(Tx tx, Standard standard, StandardEvent event, LocalDate today) {
    if (event.on().isAfter(today)) {
      throw new Refused(StandardProblem.EVENT_IN_FUTURE, event.on());
    }
    store.add(tx, standard.id(), event);
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
