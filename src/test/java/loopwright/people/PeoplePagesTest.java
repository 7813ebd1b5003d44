package loopwright.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.db.Database;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.testing.Visitor;
import loopwright.web.NavItem;
import loopwright.web.Page;
import loopwright.web.Permission;
import loopwright.web.Role;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PeoplePagesTest {
  private static final String PASSWORD = "five small grey pebbles";

  private Database database;
  private People people;
  private Web web;
  private Person admin;
  private Visitor visitor;

  @BeforeEach
  void serve() {
    database = Engine.H2.open(new TestClock("2026-03-01T10:15:30Z"));
    people = new People(database);
    People.Credentials first = people.createAdministrator().orElseThrow();
    people.changePassword(first.person(), first.password(), PASSWORD);
    admin = people.person(first.person().number()).orElseThrow();
    List<NavItem> nav = List.of(new NavItem("/people", "People", "people", Permission.ADMINISTER));
    Page page = new Page("", nav);
    web =
        Web.start(
            WebSettings.loopback(0),
            page,
            people,
            new TestClock("2026-03-01T10:15:30Z"),
            List.of(new PeoplePages(people, page)));
    visitor = signedIn("admin", PASSWORD);
  }

  @AfterEach
  void stop() {
    web.close();
    database.close();
  }

  private Visitor signedIn(String login, String password) {
    Visitor one = new Visitor(web.address());
    assertThat(one.signIn(login, password).status()).isEqualTo(303);
    one.get("/password");
    return one;
  }

  private Person add(String login, Role role) {
    return people.add(
        admin, new Login(login), new Account("Test " + login, role, true), PASSWORD, "joined");
  }

  private Visitor.Answer addThroughPage(String login, String password) {
    visitor.get("/people/new");
    return visitor.post(
        "/people/new",
        "name",
        "T. Miller",
        "login",
        login,
        "role",
        "technician",
        "initial-password",
        password,
        "reason",
        "joined the shop");
  }

  @Test
  void whoIsAddedSignsInAndMustChooseAPassword() {
    String proposed =
        visitor.get("/people/new").page().select("input[name=initial-password]").attr("value");
    assertThat(addThroughPage(" T.Miller", proposed).location()).isEqualTo("/people");
    assertThat(visitor.get("/people").page().text())
        .contains("T. Miller can sign in as t.miller.")
        .contains("active, must choose a password");
    Visitor miller = new Visitor(web.address());
    assertThat(miller.signIn("t.miller", proposed).status()).isEqualTo(303);
    assertThat(miller.get("/people").status()).isNotEqualTo(200);
    miller.get("/password");
    miller.post(
        "/password",
        "old-password",
        proposed,
        "fresh-password",
        PASSWORD,
        "again-password",
        PASSWORD);
    assertThat(people.authenticate("t.miller", PASSWORD)).isPresent();
    assertThat(miller.get("/people").status()).isEqualTo(403);
  }

  @Test
  void whatCanNotBeAddedIsSaidAtItsFieldAndNothingTypedIsLost() {
    Visitor.Answer wrong = addThroughPage("two words", "short");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.page().select("#login-about").text()).contains("can't be a login");
    assertThat(wrong.page().select("#initial-password-about").text()).contains("12 to 200");
    assertThat(wrong.page().select("input[name=name]").attr("value")).isEqualTo("T. Miller");
    assertThat(wrong.page().select("input[name=reason]").attr("value"))
        .isEqualTo("joined the shop");
    Visitor.Answer taken = addThroughPage("ADMIN", "long enough for all");
    assertThat(taken.status()).isEqualTo(422);
    assertThat(taken.page().select("#login-about").text())
        .contains("belongs to First administrator");
    assertThat(people.all()).hasSize(1);
  }

  private Visitor.Answer change(Person person, String version, String... fields) {
    visitor.get("/people/" + person.number());
    String[] all = new String[fields.length + 2];
    all[0] = "version";
    all[1] = version;
    System.arraycopy(fields, 0, all, 2, fields.length);
    return visitor.post("/people/" + person.number(), all);
  }

  @Test
  void aRoleIsChangedWithAReason() {
    Person person = add("t.miller", Role.TECHNICIAN);
    Visitor.Answer noReason =
        change(person, "1", "name", "T. Miller", "role", "planner", "active", "yes");
    assertThat(noReason.status()).isEqualTo(422);
    assertThat(noReason.page().select("#reason-about").text()).contains("Fill this in");
    change(
        person,
        "1",
        "name",
        "T. Miller",
        "role",
        "planner",
        "active",
        "yes",
        "reason",
        "plans now");
    Person now = people.person(person.number()).orElseThrow();
    assertThat(now.role()).isEqualTo(Role.PLANNER);
    assertThat(now.active()).isTrue();
    assertThat(people.lastChange(person.number()).reason()).isEqualTo("plans now");
  }

  @Test
  void theSecondOfTwoEditorsSeesWhatChangedAndKeepsWhatTheyTyped() {
    Person person = add("t.miller", Role.TECHNICIAN);
    people.change(
        admin,
        person.number(),
        person.version(),
        new Account("T. Miller", Role.ENGINEER, true),
        "promoted");
    Visitor.Answer stale =
        change(
            person,
            "1",
            "name",
            "Tom Miller",
            "role",
            "viewer",
            "active",
            "yes",
            "reason",
            "renamed");
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().select(".notice").text()).contains("engineer").contains("promoted");
    assertThat(stale.page().select("input[name=name]").attr("value")).isEqualTo("Tom Miller");
    assertThat(people.person(person.number())).map(Person::role).contains(Role.ENGINEER);
    assertThat(stale.page().select("input[name=version]").attr("value")).isEqualTo("2");
  }

  @Test
  void deactivatingEndsTheSession() {
    Person person = add("t.miller", Role.ADMINISTRATOR);
    people.changePassword(person, PASSWORD, PASSWORD + "!");
    Visitor other = signedIn("t.miller", PASSWORD + "!");
    assertThat(other.get("/people").status()).isEqualTo(200);
    change(person, "2", "name", "T. Miller", "role", "administrator", "reason", "left");
    assertThat(people.person(person.number())).map(Person::active).contains(false);
    assertThat(other.get("/people").location()).startsWith("/sign-in");
  }

  @Test
  void theLastAdministratorCanNotStepDown() {
    Visitor.Answer answer =
        change(admin, "2", "name", "A", "role", "viewer", "active", "yes", "reason", "bored");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text())
        .contains("is the last active administrator")
        .contains("P-105");
  }

  @Test
  void aResetShowsTheOneTimePasswordOnce() {
    Person person = add("t.miller", Role.TECHNICIAN);
    visitor.get("/people/" + person.number());
    Visitor.Answer given =
        visitor.post(
            "/people/" + person.number() + "/password", "version", "1", "reset-reason", "forgot");
    String password = given.page().select("dd b").text();
    assertThat(people.authenticate("t.miller", password)).isPresent();
    assertThat(given.header("Cache-Control")).contains("no-store");
    assertThat(visitor.get("/people/" + person.number()).body()).doesNotContain(password);
  }

  @Test
  void whoIsNotThereIsSaidNotToBe() {
    assertThat(visitor.get("/people/77").status()).isEqualTo(404);
    assertThat(visitor.get("/people/x").status()).isEqualTo(404);
  }

  @Test
  void othersMayNotEvenLook() {
    Person person = add("e.ngineer", Role.ENGINEER);
    people.changePassword(person, PASSWORD, PASSWORD + "!");
    Visitor other = signedIn("e.ngineer", PASSWORD + "!");
    assertThat(other.get("/people").status()).isEqualTo(403);
    assertThat(other.post("/people/1", "name", "x").status()).isEqualTo(403);
  }
}
