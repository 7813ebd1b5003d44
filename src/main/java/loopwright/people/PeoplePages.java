package loopwright.people;

import io.javalin.http.Context;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.problem.Refused;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Role;
import loopwright.web.Routes;
import loopwright.web.WebProblem;

/** Accounts, for administrators. One's own password has its own page. */
public final class PeoplePages implements Pages {
  private static final String PATH = "/people";
  private static final int LONGEST_REASON = 2_000;

  private final People people;
  private final Page page;

  public PeoplePages(People people, Page page) {
    this.people = people;
    this.page = page;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(PATH, Permission.ADMINISTER, this::list);
    routes.get(PATH + "/new", Permission.ADMINISTER, this::askForNew);
    routes.post(PATH + "/new", Permission.ADMINISTER, this::add);
    routes.get(PATH + "/{number}", Permission.ADMINISTER, this::show);
    routes.post(PATH + "/{number}", Permission.ADMINISTER, this::change);
    routes.post(PATH + "/{number}/password", Permission.ADMINISTER, this::resetPassword);
  }

  private void list(Context http) {
    page.show(http, "people/list", Map.of("people", people.all()));
  }

  // ---- a new person

  private void askForNew(Context http) {
    Form form =
        Form.of(Map.of("initial-password", People.proposePassword(), "role", Role.VIEWER.word()));
    showNew(http, 200, form);
  }

  private void add(Context http) {
    Form form = Form.from(http);
    Login login = form.read("login", Login::new);
    Optional<Account> account = account(form, true);
    form.read("initial-password", Passwords::acceptable);
    String reason = form.text("reason", LONGEST_REASON);
    if (form.ok() && added(http, form, login, account.orElseThrow(), reason)) {
      page.go(http, PATH, account.orElseThrow().name() + " can sign in as " + login.text() + ".");
    } else {
      showNew(http, 422, form);
    }
  }

  private boolean added(Context http, Form form, Login login, Account account, String reason) {
    try {
      people.add(Actor.of(http), login, account, form.typed("initial-password"), reason);
    } catch (Refused refused) {
      complain(form, refused, PeopleProblem.LOGIN_TAKEN, "login");
    }
    return form.ok();
  }

  private void showNew(Context http, int status, Form form) {
    page.show(http, status, "people/new", Map.of("form", form, "roles", roles()));
  }

  // ---- somebody who is there

  private void show(Context http) {
    Person person = person(http);
    show(http, 200, person, filled(person), Form.blank());
  }

  private static Form filled(Person person) {
    Form form =
        Form.of(Map.of("name", person.name(), "role", person.role().word()))
            .at(Integer.toString(person.version()));
    return person.active() ? form.put("active", "yes") : form;
  }

  private void change(Context http) {
    Person person = person(http);
    Form form = Form.from(http);
    Optional<Account> account = account(form, form.chosen("active", "yes"));
    String reason = form.text("reason", LONGEST_REASON);
    if (form.ok()) {
      try {
        Person now =
            people.change(
                Actor.of(http), person.number(), version(form), account.orElseThrow(), reason);
        page.go(http, address(now), now.name() + " is changed.");
        return;
      } catch (Refused refused) {
        complain(form, refused, PeopleProblem.NAME_FORM, "name");
      }
    }
    showAgain(http, form, Form.blank());
  }

  private void resetPassword(Context http) {
    Person person = person(http);
    Form form = Form.from(http);
    String reason = form.text("reset-reason", LONGEST_REASON);
    if (form.ok()) {
      try {
        People.Credentials given =
            people.resetPassword(Actor.of(http), person.number(), version(form), reason);
        page.show(http, "people/given", Map.of("given", given));
        return;
      } catch (Refused refused) {
        form.complain(refused);
      }
    }
    showAgain(http, filled(person), form);
  }

  /** What was typed stays; a person who moved on meanwhile is shown as they are now. */
  private void showAgain(Context http, Form form, Form reset) {
    Person now = person(http);
    boolean stale = form.stale(Integer.toString(now.version()));
    show(http, stale ? 409 : 422, now, form.at(Integer.toString(now.version())), reset);
  }

  private void show(Context http, int status, Person person, Form form, Form reset) {
    Map<String, Object> model = new HashMap<>();
    model.put("person", person);
    model.put("last", people.lastChange(person.number()));
    model.put("form", form);
    model.put("reset", reset.at(Integer.toString(person.version())));
    model.put("roles", roles());
    model.put("stale", status == 409);
    model.put("own", Actor.of(http).id().equals(person.id()));
    page.show(http, status, "people/person", model);
  }

  // ---- reading

  private Person person(Context http) {
    String typed = http.pathParam("number");
    return Optional.of(typed)
        .filter(text -> text.matches("\\d{1,18}"))
        .map(Long::valueOf)
        .flatMap(people::person)
        .orElseThrow(() -> new Refused(WebProblem.MISSING, "person", typed));
  }

  private static Optional<Account> account(Form form, boolean active) {
    Role role = form.read("role", PeoplePages::role);
    return Optional.ofNullable(
        form.read("name", name -> new Account(name, role == null ? Role.VIEWER : role, active)));
  }

  private static Role role(String word) {
    return Arrays.stream(Role.values())
        .filter(role -> role.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("Choose one of the roles."));
  }

  private static int version(Form form) {
    return form.version().matches("\\d{1,9}") ? Integer.parseInt(form.version()) : -1;
  }

  private static Map<String, String> roles() {
    Map<String, String> roles = new LinkedHashMap<>();
    roles.put(Role.VIEWER.word(), "viewer: sees everything, changes nothing");
    roles.put(Role.TECHNICIAN.word(), "technician: surveys, assemblies, calibrations");
    roles.put(Role.PLANNER.word(), "planner: also imports and outages");
    roles.put(Role.ENGINEER.word(), "engineer: also families, profiles, concessions");
    roles.put(Role.ADMINISTRATOR.word(), "administrator: also accounts and backups");
    return roles;
  }

  private static void complain(Form form, Refused refused, PeopleProblem ofField, String field) {
    if (refused.problem() == ofField) {
      form.complain(field, String.valueOf(refused.getMessage()));
    } else if (refused.problem() == DbProblem.STALE) {
      form.complain("Somebody else changed this person after you opened the page.");
    } else {
      form.complain(refused);
    }
  }

  private static String address(Person person) {
    return PATH + "/" + person.number();
  }
}
