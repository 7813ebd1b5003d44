package loopwright.signing;

import static loopwright.db.gen.Tables.AUTHORISATION;
import static loopwright.db.gen.Tables.AUTHORISATION_ENDED;
import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_SIGNATURE;
import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.STANDARD_CONCESSION;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.db.gen.tables.Person;
import loopwright.db.gen.tables.records.AuthorisationEndedRecord;
import loopwright.db.gen.tables.records.AuthorisationRecord;
import loopwright.db.gen.tables.records.CalibrationSignatureRecord;
import loopwright.db.gen.tables.records.StandardConcessionRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Authorisations, signatures and concessions for standards. Insert-only. */
final class SigningStore {
  private static final Person GRANTER = PERSON.as("granter");

  void add(Tx tx, Authorisation fresh, long grantedBy) {
    AuthorisationRecord row = tx.row(AUTHORISATION);
    row.setPersonId(fresh.person());
    row.setScope(fresh.scope().word());
    row.setValidFrom(fresh.from());
    row.setValidUntil(fresh.until());
    row.setBasis(fresh.basis());
    row.setGrantedBy(grantedBy);
    tx.insert(row);
  }

  void end(Tx tx, long authorisation, LocalDate on, String reason) {
    AuthorisationEndedRecord row = tx.row(AUTHORISATION_ENDED);
    row.setAuthorisationId(authorisation);
    row.setEndedOn(on);
    row.setReason(reason);
    tx.insert(row);
  }

  List<Authorisation> all(DSLContext sql) {
    return authorisations(sql, DSL.noCondition());
  }

  List<Authorisation> of(DSLContext sql, long person, Scope scope) {
    return authorisations(
        sql, AUTHORISATION.PERSON_ID.eq(person).and(AUTHORISATION.SCOPE.eq(scope.word())));
  }

  private static List<Authorisation> authorisations(DSLContext sql, Condition which) {
    return sql.select(
            AUTHORISATION.asterisk(),
            PERSON.FULL_NAME,
            GRANTER.FULL_NAME,
            AUTHORISATION_ENDED.ENDED_ON,
            AUTHORISATION_ENDED.REASON)
        .from(AUTHORISATION)
        .join(PERSON)
        .on(PERSON.ID.eq(AUTHORISATION.PERSON_ID))
        .join(GRANTER)
        .on(GRANTER.ID.eq(AUTHORISATION.GRANTED_BY))
        .leftJoin(AUTHORISATION_ENDED)
        .on(AUTHORISATION_ENDED.AUTHORISATION_ID.eq(AUTHORISATION.ID))
        .where(which)
        .orderBy(PERSON.FULL_NAME, AUTHORISATION.ID.desc())
        .fetch(SigningStore::authorisation);
  }

  private static Authorisation authorisation(Record row) {
    String reason = row.get(AUTHORISATION_ENDED.REASON);
    return new Authorisation(
        row.get(AUTHORISATION.ID),
        row.get(AUTHORISATION.PERSON_ID),
        row.get(PERSON.FULL_NAME),
        Scope.named(row.get(AUTHORISATION.SCOPE)),
        row.get(AUTHORISATION.VALID_FROM),
        row.get(AUTHORISATION.VALID_UNTIL),
        row.get(AUTHORISATION.BASIS),
        row.get(GRANTER.FULL_NAME),
        row.get(AUTHORISATION_ENDED.ENDED_ON),
        reason == null ? "" : reason);
  }

  long add(Tx tx, StandardConcession fresh) {
    StandardConcessionRecord row = tx.row(STANDARD_CONCESSION);
    row.setCertificateId(fresh.certificate());
    row.setGrantedBy(fresh.grantedBy());
    row.setUntilOn(fresh.until());
    row.setReason(fresh.reason());
    row.setMeasure(fresh.measure());
    return tx.insert(row).getId();
  }

  /** Newest first. */
  List<StandardConcession> concessions(DSLContext sql, Collection<Long> certificates) {
    return sql.select(STANDARD_CONCESSION.asterisk(), PERSON.FULL_NAME)
        .from(STANDARD_CONCESSION)
        .join(PERSON)
        .on(PERSON.ID.eq(STANDARD_CONCESSION.GRANTED_BY))
        .where(STANDARD_CONCESSION.CERTIFICATE_ID.in(certificates))
        .orderBy(STANDARD_CONCESSION.ID.desc())
        .fetch(
            row ->
                new StandardConcession(
                    row.get(STANDARD_CONCESSION.ID),
                    row.get(STANDARD_CONCESSION.CERTIFICATE_ID),
                    row.get(STANDARD_CONCESSION.GRANTED_BY),
                    row.get(PERSON.FULL_NAME),
                    row.get(STANDARD_CONCESSION.UNTIL_ON),
                    row.get(STANDARD_CONCESSION.REASON),
                    row.get(STANDARD_CONCESSION.MEASURE)));
  }

  void add(Tx tx, Signature fresh) {
    CalibrationSignatureRecord row = tx.row(CALIBRATION_SIGNATURE);
    row.setCalibrationId(fresh.calibration());
    row.setRole(fresh.role());
    row.setPersonId(fresh.person());
    row.setSignerName(fresh.name());
    row.setSignedAt(Tx.moment(fresh.at()));
    row.setAuthorisationId(fresh.authorisation());
    row.setContentHash(fresh.hash());
    row.setConcessions(fresh.concessions());
    tx.insert(row);
  }

  /** Who entered a calibration: the account's number, if somebody's did, and the name then. */
  Map.Entry<Optional<Long>, String> entered(DSLContext sql, long calibration) {
    return sql.select(CHANGE.ACTOR_ID, CHANGE.ACTOR_NAME)
        .from(CALIBRATION)
        .join(CHANGE)
        .on(CHANGE.ID.eq(CALIBRATION.CHANGE_ID))
        .where(CALIBRATION.ID.eq(calibration))
        .fetchSingle(row -> Map.entry(Optional.ofNullable(row.value1()), row.value2()));
  }

  List<Signature> signatures(DSLContext sql, long calibration) {
    return signatures(sql, CALIBRATION_SIGNATURE.CALIBRATION_ID.eq(calibration));
  }

  /** Of many calibrations, by their ids. */
  Map<Long, List<Signature>> signatures(DSLContext sql, List<Long> calibrations) {
    return signatures(sql, CALIBRATION_SIGNATURE.CALIBRATION_ID.in(calibrations)).stream()
        .collect(Collectors.groupingBy(Signature::calibration));
  }

  private static List<Signature> signatures(DSLContext sql, Condition which) {
    return sql.select(CALIBRATION_SIGNATURE.asterisk(), AUTHORISATION.BASIS)
        .from(CALIBRATION_SIGNATURE)
        .join(AUTHORISATION)
        .on(AUTHORISATION.ID.eq(CALIBRATION_SIGNATURE.AUTHORISATION_ID))
        .where(which)
        .orderBy(CALIBRATION_SIGNATURE.ID)
        .fetch(
            row ->
                new Signature(
                    row.get(CALIBRATION_SIGNATURE.CALIBRATION_ID),
                    row.get(CALIBRATION_SIGNATURE.ROLE),
                    row.get(CALIBRATION_SIGNATURE.PERSON_ID),
                    row.get(CALIBRATION_SIGNATURE.SIGNER_NAME),
                    row.get(CALIBRATION_SIGNATURE.SIGNED_AT).toInstant(),
                    row.get(CALIBRATION_SIGNATURE.AUTHORISATION_ID),
                    row.get(AUTHORISATION.BASIS),
                    row.get(CALIBRATION_SIGNATURE.CONTENT_HASH),
                    row.get(CALIBRATION_SIGNATURE.CONCESSIONS)));
  }

  /** Numbers of calibrations signed by the technician and reviewed by nobody, newest first. */
  List<String> notReviewed(DSLContext sql, int most) {
    var review = CALIBRATION_SIGNATURE.as("review");
    return sql.select(CALIBRATION.NUMBER)
        .from(CALIBRATION_SIGNATURE)
        .join(CALIBRATION)
        .on(CALIBRATION.ID.eq(CALIBRATION_SIGNATURE.CALIBRATION_ID))
        .where(CALIBRATION_SIGNATURE.ROLE.eq(Signature.TECHNICIAN))
        .andNotExists(
            DSL.selectOne()
                .from(review)
                .where(review.CALIBRATION_ID.eq(CALIBRATION_SIGNATURE.CALIBRATION_ID))
                .and(review.ROLE.eq(Signature.REVIEWER)))
        .orderBy(CALIBRATION_SIGNATURE.ID.desc())
        .limit(most)
        .fetch(CALIBRATION.NUMBER);
  }
}
