package loopwright.people;

import static loopwright.db.gen.Tables.PERSON;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.password4j.Argon2Function;
import com.password4j.types.Argon2;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Installation;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.web.Role;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@ParameterizedClass
@EnumSource(Engine.class)
class PeopleTest {
  private static final TestClock CLOCK = new TestClock("2026-03-01T10:15:30Z");

  /** Next to no work: what a password costs is proved by one test of its own. */
  private static final Passwords CHEAP =
      new Passwords(Argon2Function.getInstance(64, 1, 1, 32, Argon2.ID));

  private final Engine engine;
  private Database database;
  private People people;
  private People.Credentials first;

  PeopleTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(CLOCK);
    people = new People(database, CHEAP);
    first = people.createAdministrator().orElseThrow();
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private Person add(String login, Role role) {
    return people.add(
        first.person(),
        new Login(login),
        new Account("Test " + login, role, true),
        "twelve or more",
        "joined the shop");
  }

  private static void assertRefused(Problem problem, Callable<?> what) {
    assertThatThrownBy(what::call)
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(problem));
  }

  @Test
  void aNameStandsForOneAccount() {
    Person miller = add("t.miller", Role.TECHNICIAN);
    Person other = add("other", Role.TECHNICIAN);
    Account same = new Account(" test T.Miller ", Role.TECHNICIAN, true);
    assertRefused(
        PeopleProblem.NAME_TAKEN,
        () -> people.add(first.person(), new Login("third"), same, "twelve or more", "new"));
    assertRefused(
        PeopleProblem.NAME_TAKEN,
        () -> people.change(first.person(), other.number(), other.version(), same, "renamed"));
    Account engineer = new Account(miller.name(), Role.ENGINEER, true);
    assertThat(
            people
                .change(first.person(), miller.number(), miller.version(), engineer, "examined")
                .role())
        .isEqualTo(Role.ENGINEER);
  }

  @Test
  void theFirstAdministratorSignsInOnceWithTheOneTimePassword() {
    assertThat(first.password()).matches("([a-hjkmnp-z2-9]{4}-){3}[a-hjkmnp-z2-9]{4}");
    assertThat(first.toString()).doesNotContain(first.password());
    assertThat(people.authenticate("Admin ", first.password()))
        .hasValueSatisfying(
            actor -> {
              assertThat(actor.mustChangePassword()).isTrue();
              assertThat(actor.role()).isEqualTo(Role.ADMINISTRATOR);
            });
    assertThat(people.createAdministrator()).isEmpty();
  }

  @Test
  void aPasswordOfOnesOwnEndsTheOneTimeOneAndTheSessionsUnderIt() {
    assertThat(people.changePassword(first.person(), "not the password", "five grey pebbles"))
        .isFalse();
    assertThat(people.changePassword(first.person(), first.password(), "five grey pebbles"))
        .isTrue();
    assertThat(people.authenticate("admin", first.password())).isEmpty();
    Person now = (Person) people.authenticate("admin", "five grey pebbles").orElseThrow();
    assertThat(now.mustChangePassword()).isFalse();
    assertThat(now.passwordVersion()).isGreaterThan(first.person().passwordVersion());
  }

  @Test
  void aShortPasswordIsRefusedAndTheOldOneStays() {
    assertRefused(
        PeopleProblem.PASSWORD_LENGTH,
        () -> people.changePassword(first.person(), first.password(), "too short"));
    assertThat(people.authenticate("admin", first.password())).isPresent();
  }

  @Test
  void keyboardsThatComposeLettersDifferentlyGiveOnePassword() {
    people.changePassword(first.person(), first.password(), "vier gr\u00fcne Kiesel");
    assertThat(people.authenticate("admin", "vier gru\u0308ne Kiesel")).isPresent();
  }

  @Test
  void whoIsInactiveCanNotSignInAndStaysInTheRecord() {
    Person left = add("t.left", Role.TECHNICIAN);
    assertThat(people.authenticate("t.left", "twelve or more")).isPresent();
    people.change(
        first.person(),
        left.number(),
        left.version(),
        new Account(left.name(), left.role(), false),
        "left the shop");
    assertThat(people.authenticate("t.left", "twelve or more")).isEmpty();
    assertThat(people.find(left.id())).isEmpty();
    assertThat(people.person(left.number())).map(Person::name).contains("Test t.left");
    assertRefused(PeopleProblem.LOGIN_TAKEN, () -> add("T.LEFT", Role.VIEWER));
  }

  @Test
  void theLastActiveAdministratorStays() {
    Person admin = first.person();
    for (Account less :
        List.of(
            new Account(admin.name(), Role.ENGINEER, true),
            new Account(admin.name(), Role.ADMINISTRATOR, false))) {
      assertRefused(
          PeopleProblem.LAST_ADMINISTRATOR,
          () -> people.change(admin, admin.number(), admin.version(), less, "steps down"));
    }
    add("second", Role.ADMINISTRATOR);
    people.change(
        admin,
        admin.number(),
        admin.version(),
        new Account(admin.name(), Role.VIEWER, true),
        "steps down");
    assertThat(people.person(admin.number())).map(Person::role).contains(Role.VIEWER);
  }

  @Test
  void anAdministratorRenamesThemselvesThoughTheyAreTheLast() {
    Person admin = first.person();
    people.change(
        admin,
        admin.number(),
        admin.version(),
        new Account(" R. Keeper ", Role.ADMINISTRATOR, true),
        "name was missing");
    assertThat(people.person(admin.number())).map(Person::name).contains("R. Keeper");
  }

  @Test
  void twoAdministratorsWhoStepDownAtOnceDoNotBothGo() throws Exception {
    Person second = add("second", Role.ADMINISTRATOR);
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try {
      List<Future<Boolean>> tries =
          threads.invokeAll(List.of(() -> stepsDown(first.person()), () -> stepsDown(second)));
      assertThat(List.of(tries.get(0).get(), tries.get(1).get())).containsOnlyOnce(true);
    } finally {
      threads.shutdownNow();
    }
    assertThat(people.all()).filteredOn(Person::isActiveAdministrator).hasSize(1);
  }

  private boolean stepsDown(Person person) {
    try {
      people.change(
          person,
          person.number(),
          person.version(),
          new Account(person.name(), Role.VIEWER, true),
          "steps down");
      return true;
    } catch (Refused last) {
      assertThat(last.problem()).isEqualTo(PeopleProblem.LAST_ADMINISTRATOR);
      return false;
    }
  }

  @Test
  void theSecondOfTwoEditsIsRefused() {
    Person seen = add("seen", Role.VIEWER);
    people.change(
        first.person(),
        seen.number(),
        seen.version(),
        new Account(seen.name(), Role.PLANNER, true),
        "plans now");
    assertRefused(
        DbProblem.STALE,
        () ->
            people.change(
                first.person(),
                seen.number(),
                seen.version(),
                new Account("Other", Role.VIEWER, true),
                "renamed"));
    assertThat(people.lastChange(seen.number()).reason()).isEqualTo("plans now");
  }

  @Test
  void aResetGivesAOneTimePassword() {
    Person forgot = add("forgot", Role.TECHNICIAN);
    People.Credentials given =
        people.resetPassword(first.person(), forgot.number(), forgot.version(), "forgot it");
    assertThat(people.authenticate("forgot", "twelve or more")).isEmpty();
    assertThat(people.authenticate("forgot", given.password()))
        .hasValueSatisfying(actor -> assertThat(actor.mustChangePassword()).isTrue());
    assertRefused(
        PeopleProblem.OWN_RESET,
        () -> people.resetPassword(first.person(), first.person().number(), 1, "own"));
  }

  @Test
  void passwordsAreArgon2idWithSaltsOfTheirOwnAndOutOfTheJournal() {
    people = new People(database);
    add("one", Role.VIEWER);
    add("two", Role.VIEWER);
    Set<String> hashes = database.read(sql -> Set.copyOf(sql.fetchValues(PERSON.PASSWORD_HASH)));
    assertThat(hashes)
        .filteredOn(hash -> hash.startsWith("$argon2id$v=19$m=19456,t=2,p=1$"))
        .as("a salt of its own makes each another one")
        .hasSize(2);
    String journal =
        database.read(
            sql ->
                sql
                    .fetch("SELECT body FROM journal_entry")
                    .map(
                        row ->
                            new String(
                                (byte[]) row.get(0), java.nio.charset.StandardCharsets.UTF_8))
                    .stream()
                    .collect(Collectors.joining()));
    assertThat(journal).contains("\"login\":\"one\"").doesNotContain("argon2");
  }

  @Test
  void demoAccountsAreForADemoOnly() {
    assertRefused(PeopleProblem.NOT_A_DEMO, people::createDemoAccounts);
    Installation.claim(database, Installation.Purpose.SITE, CLOCK);
    assertRefused(PeopleProblem.NOT_A_DEMO, people::createDemoAccounts);
  }

  @Test
  void inADemoEachRoleHasAnAccountAndMakingThemTwiceChangesNothing() {
    Installation.claim(database, Installation.Purpose.DEMO, CLOCK);
    List<People.Credentials> made = people.createDemoAccounts();
    assertThat(people.createDemoAccounts()).hasSameSizeAs(made);
    for (Role role : Role.values()) {
      assertThat(people.authenticate(role.word(), People.DEMO_PASSWORD))
          .hasValueSatisfying(actor -> assertThat(actor.role()).isEqualTo(role));
    }
  }

  @Test
  void anUnknownLoginCostsAsMuchAsAWrongPassword() {
    long known = median(() -> people.authenticate("admin", "wrong password"));
    long unknown = median(() -> people.authenticate("nobody", "wrong password"));
    assertThat((double) unknown / known).isBetween(0.1, 10.0);
  }

  private static long median(Runnable work) {
    return IntStream.range(0, 9)
        .mapToLong(
            i -> {
              long before = System.nanoTime();
              work.run();
              return System.nanoTime() - before;
            })
        .sorted()
        .skip(4)
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "two words", "\u00e4rger", ".dot", "a/b", "x\ny"})
  void whatCanNotBeALogin(String typed) {
    assertRefused(PeopleProblem.LOGIN_FORM, () -> new Login(typed));
  }

  @Test
  void loginsAreSmall() {
    assertThat(new Login(" T.Miller@Shop ").text()).isEqualTo("t.miller@shop");
  }
}
