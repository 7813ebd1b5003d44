package loopwright.people;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Installation;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.web.Accounts;
import loopwright.web.Actor;
import loopwright.web.Role;
import org.jspecify.annotations.Nullable;

/** The accounts: who may sign in and what administrators do to them. Shared by all threads. */
public final class People implements Accounts {
  /** The password of every demo account. */
  public static final String DEMO_PASSWORD = "turning gear";

  private static final long NOBODY_YET = -1;

  private final Database database;
  private final Passwords passwords;
  private final PeopleStore store = new PeopleStore();

  public People(Database database) {
    this(database, Passwords.usual());
  }

  People(Database database, Passwords passwords) {
    this.database = database;
    this.passwords = passwords;
  }

  /** A login with the password that goes with it, to be shown once. */
  public record Credentials(Person person, String password) {
    /** Without the password. */
    @Override
    public String toString() {
      return "Credentials[" + person.login() + "]";
    }
  }

  /** An act of somebody signed in, for the record. */
  public static Act act(Actor by, String what, String reason) {
    return new Act(Long.valueOf(by.id()), by.name(), by.role().word(), what, reason);
  }

  /**
   * {@inheritDoc}
   *
   * <p>An unknown login and an inactive person cost the same work as a wrong password.
   */
  @Override
  public Optional<Actor> authenticate(String login, String password) {
    Optional<Person> known = database.read(sql -> store.find(sql, Login.lower(login)));
    if (known.isEmpty()) {
      passwords.matchNobody(password);
      return Optional.empty();
    }
    Person person = known.get();
    boolean matches = matches(person, password);
    return matches && person.active() ? Optional.of(person) : Optional.empty();
  }

  /** Whether this is the person's password; asked again where something weighty is done. */
  public boolean confirms(Actor actor, String password) {
    return number(actor.id())
        .flatMap(this::person)
        .filter(Person::active)
        .filter(person -> matches(person, password))
        .isPresent();
  }

  private boolean matches(Person person, String password) {
    String hash = database.read(sql -> store.passwordHash(sql, person.number()));
    return passwords.matches(password, hash);
  }

  @Override
  public Optional<Actor> find(String id) {
    return number(id).flatMap(this::person).filter(Person::active).map(Actor.class::cast);
  }

  private static Optional<Long> number(String id) {
    try {
      return Optional.of(Long.valueOf(id));
    } catch (NumberFormatException noNumber) {
      return Optional.empty();
    }
  }

  @Override
  public boolean changePassword(Actor actor, String old, String fresh) {
    Optional<Person> found = number(actor.id()).flatMap(this::person).filter(Person::active);
    if (found.isEmpty() || !matches(found.get(), old)) {
      return false;
    }
    String hash = passwords.hash(Passwords.acceptable(fresh));
    Person person = found.get();
    database.write(
        act(person, "choose password", "chose a password of their own"),
        tx -> {
          store.changePassword(tx, person.number(), person.version(), hash, false);
          return person;
        });
    return true;
  }

  /** Active ones first, then by name. */
  public List<Person> all() {
    return database.read(store::all);
  }

  public Optional<Person> person(long number) {
    return database.read(sql -> store.find(sql, number));
  }

  LastChange lastChange(long number) {
    return database.read(sql -> store.lastChange(sql, number));
  }

  /**
   * Makes the first administrator with a one-time password, when there is nobody at all yet. The
   * password is kept nowhere else: show it.
   *
   * @return empty when there are accounts already
   */
  public Optional<Credentials> createAdministrator() {
    if (!database.read(store::isEmpty)) {
      return Optional.empty();
    }
    String password = Passwords.oneTime();
    String hash = passwords.hash(password);
    Act act = Act.ofProgram("create first administrator", "nobody could sign in yet");
    Account account = new Account("First administrator", Role.ADMINISTRATOR, true);
    Person person =
        database.write(act, tx -> store.add(tx, new Login("admin"), account, hash, true));
    return Optional.of(new Credentials(person, password));
  }

  /**
   * One account for each role in a demo database; login is the role's word, the password {@link
   * #DEMO_PASSWORD}. Those that are there already stay as they are.
   *
   * @throws Refused {@link PeopleProblem#NOT_A_DEMO} in any other database
   */
  public List<Credentials> createDemoAccounts() {
    if (Installation.of(database)
        .filter(found -> found.purpose() == Installation.Purpose.DEMO)
        .isEmpty()) {
      throw new Refused(PeopleProblem.NOT_A_DEMO);
    }
    String hash = passwords.hash(DEMO_PASSWORD);
    Act act = Act.ofProgram("create demo accounts", "to let people look around");
    return database.write(
        act, tx -> Arrays.stream(Role.values()).map(role -> demo(tx, role, hash)).toList());
  }

  private Credentials demo(Tx tx, Role role, String hash) {
    String word = role.word();
    String name = "Demo " + Text.capital(word);
    Person person =
        store
            .find(tx.sql(), word)
            .orElseGet(
                () -> store.add(tx, new Login(word), new Account(name, role, true), hash, false));
    return new Credentials(person, DEMO_PASSWORD);
  }

  /** A password to hand to somebody: random and easy to read out. */
  public static String proposePassword() {
    return Passwords.oneTime();
  }

  /**
   * Makes an account whose password must be changed at the first sign-in.
   *
   * @throws Refused {@link PeopleProblem#LOGIN_TAKEN}, {@link PeopleProblem#PASSWORD_LENGTH}
   */
  public Person add(Actor by, Login login, Account account, String password, String reason) {
    String hash = passwords.hash(Passwords.acceptable(password));
    return database.write(
        act(by, "add person", reason),
        tx -> {
          refuseTaken(store.find(tx.sql(), login.text()).orElse(null));
          refuseNameTaken(tx, NOBODY_YET, account);
          return store.add(tx, login, account, hash, true);
        });
  }

  private static void refuseTaken(@Nullable Person holder) {
    if (holder != null) {
      throw new Refused(PeopleProblem.LOGIN_TAKEN, holder.login(), holder.name());
    }
  }

  /**
   * Changes name, role or whether they may sign in.
   *
   * @param version of the account that the administrator was looking at
   * @throws Refused {@link loopwright.db.DbProblem#STALE} when it moved on meanwhile; {@link
   *     PeopleProblem#LAST_ADMINISTRATOR} when nobody would be left to keep accounts
   */
  public Person change(Actor by, long number, int version, Account account, String reason) {
    return database.write(
        act(by, "change person", reason),
        tx -> {
          refuseLastAdministrator(tx, number, account);
          refuseNameTaken(tx, number, account);
          return store.change(tx, number, version, account);
        });
  }

  /** Who took a calibration is told by name, and signs it by that name. */
  private void refuseNameTaken(Tx tx, long number, Account account) {
    store.all(tx.sql()).stream()
        .filter(other -> other.number() != number)
        .filter(other -> other.name().strip().equalsIgnoreCase(account.name().strip()))
        .findFirst()
        .ifPresent(
            other -> {
              throw new Refused(PeopleProblem.NAME_TAKEN, account.name().strip(), other.login());
            });
  }

  private void refuseLastAdministrator(Tx tx, long number, Account account) {
    boolean stays = account.active() && account.role() == Role.ADMINISTRATOR;
    if (stays || store.lockActiveAdministrators(tx) > 1) {
      return;
    }
    store
        .find(tx.sql(), number)
        .filter(Person::isActiveAdministrator)
        .ifPresent(
            last -> {
              throw new Refused(PeopleProblem.LAST_ADMINISTRATOR, last.name());
            });
  }

  /**
   * Gives a one-time password, ends the person's sessions and makes them choose their own next
   * time. The password is kept nowhere else: show it.
   */
  public Credentials resetPassword(Actor by, long number, int version, String reason) {
    if (by.id().equals(Long.toString(number))) {
      throw new Refused(PeopleProblem.OWN_RESET);
    }
    String password = Passwords.oneTime();
    String hash = passwords.hash(password);
    Person person =
        database.write(
            act(by, "reset password", reason),
            tx -> {
              store.changePassword(tx, number, version, hash, true);
              Person now = store.find(tx.sql(), number).orElseThrow();
              if (!now.active()) {
                throw new Refused(PeopleProblem.INACTIVE, now.name());
              }
              return now;
            });
    return new Credentials(person, password);
  }
}
