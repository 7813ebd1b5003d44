package loopwright.people;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.PERSON;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PersonRecord;
import loopwright.problem.Refused;
import loopwright.web.Role;
import org.jooq.DSLContext;

/** Accounts as stored. */
final class PeopleStore {

  boolean isEmpty(DSLContext sql) {
    return !sql.fetchExists(PERSON);
  }

  /** Active ones first, then by name. */
  List<Person> all(DSLContext sql) {
    return sql.selectFrom(PERSON)
        .orderBy(PERSON.ACTIVE.desc(), PERSON.FULL_NAME, PERSON.ID)
        .fetch(PeopleStore::person);
  }

  Optional<Person> find(DSLContext sql, long number) {
    return sql.fetchOptional(PERSON, PERSON.ID.eq(number)).map(PeopleStore::person);
  }

  Optional<Person> find(DSLContext sql, String login) {
    return sql.fetchOptional(PERSON, PERSON.LOGIN.eq(login)).map(PeopleStore::person);
  }

  String passwordHash(DSLContext sql, long number) {
    return sql.fetchSingle(PERSON, PERSON.ID.eq(number)).getPasswordHash();
  }

  LastChange lastChange(DSLContext sql, long number) {
    return sql.select(CHANGE.ACTOR_NAME, CHANGE.MADE_AT, CHANGE.REASON)
        .from(PERSON)
        .join(CHANGE)
        .on(CHANGE.ID.eq(PERSON.CHANGE_ID))
        .where(PERSON.ID.eq(number))
        .fetchSingle(row -> new LastChange(row.value1(), row.value2().toInstant(), row.value3()));
  }

  /**
   * Active administrators, locked until the transaction ends: two of them who step down at the same
   * moment do so one after the other.
   */
  int lockActiveAdministrators(Tx tx) {
    return tx.sql()
        .selectFrom(PERSON)
        .where(PERSON.ROLE.eq(Role.ADMINISTRATOR.word()))
        .and(PERSON.ACTIVE.isTrue())
        .orderBy(PERSON.ID)
        .forUpdate()
        .fetch()
        .size();
  }

  Person add(Tx tx, Login login, Account account, String passwordHash, boolean mustChange) {
    PersonRecord row = tx.row(PERSON);
    row.setLogin(login.text());
    row.setFullName(account.name());
    row.setRole(account.role().word());
    row.setActive(account.active());
    row.setPasswordHash(passwordHash);
    row.setMustChangePassword(mustChange);
    return person(tx.insert(row));
  }

  Person change(Tx tx, long number, int version, Account account) {
    PersonRecord row = at(tx, number, version);
    row.setFullName(account.name());
    row.setRole(account.role().word());
    row.setActive(account.active());
    tx.update(row);
    return person(row);
  }

  void changePassword(Tx tx, long number, int version, String hash, boolean mustChange) {
    PersonRecord row = at(tx, number, version);
    row.setPasswordHash(hash);
    row.setPasswordVersion(row.getPasswordVersion() + 1);
    row.setMustChangePassword(mustChange);
    tx.update(row);
  }

  private static PersonRecord at(Tx tx, long number, int version) {
    PersonRecord row =
        tx.sql()
            .fetchOptional(PERSON, PERSON.ID.eq(number))
            .orElseThrow(() -> new Refused(DbProblem.NOT_FOUND, "person", number));
    if (row.getVersion() != version) {
      throw new Refused(DbProblem.STALE);
    }
    return row;
  }

  private static Person person(PersonRecord row) {
    return new Person(
        row.getId(),
        row.getLogin(),
        row.getFullName(),
        role(row.getRole()),
        row.getActive(),
        row.getMustChangePassword(),
        row.getPasswordVersion(),
        row.getVersion());
  }

  private static Role role(String word) {
    return Arrays.stream(Role.values())
        .filter(role -> role.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("The database holds a role " + word + "."));
  }
}
