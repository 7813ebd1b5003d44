package loopwright.signing;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import loopwright.db.Database;
import loopwright.people.People;
import loopwright.people.Person;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Role;
import loopwright.web.Routes;

/** Who may sign and review, and concessions for equipment out of date; engineers enter both. */
public final class AuthorisationPages implements Pages {
  private static final int LONGEST = 2000;

  private final Database database;
  private final Page page;
  private final Signing signing;
  private final Standards standards;
  private final People people;
  private final Supplier<ZoneId> zone;
  private final InstantSource clock;

  /**
   * @param zone whose calendar counts
   */
  public AuthorisationPages(
      Database database,
      Page page,
      Signing signing,
      Standards standards,
      People people,
      Supplier<ZoneId> zone,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.signing = signing;
    this.standards = standards;
    this.people = people;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/authorisations", Permission.READ, http -> list(http, 200, fresh()));
    routes.post("/authorisations", Permission.DECIDE, this::authorise);
    routes.post("/authorisations/{number}/end", Permission.DECIDE, this::end);
    routes.get(
        "/standards/{code}/concession",
        Permission.READ,
        http -> concession(http, 200, Form.blank()));
    routes.post("/standards/{code}/concession", Permission.DECIDE, this::permit);
  }

  private LocalDate today() {
    return SiteMoment.day(clock.instant(), zone.get());
  }

  private Form fresh() {
    return Form.of(Map.of("from", today().toString(), "scope", Scope.SIGN.word()));
  }

  /** One in the list. */
  record Row(
      long id,
      String number,
      String name,
      String scope,
      String dates,
      String basis,
      String grantedBy,
      String state,
      boolean holds) {}

  private void list(Context http, int status, Form form) {
    LocalDate today = today();
    List<Row> rows =
        database.read(signing::authorisations).stream().map(each -> row(each, today)).toList();
    Map<String, Object> model = new HashMap<>();
    model.put("rows", rows);
    model.put("form", form);
    model.put("persons", persons());
    model.put(
        "scopes", Map.of("sign", "sign what they took", "review", "review what others signed"));
    page.show(http, status, "signing/authorisations", model);
  }

  private static Row row(Authorisation each, LocalDate today) {
    return new Row(
        each.id(),
        each.number(),
        each.name(),
        each.scope().word(),
        each.from() + " until " + (each.endedOn() == null ? each.until() : each.endedOn()),
        each.basis(),
        each.grantedBy(),
        each.stateOn(today) + (each.endReason().isEmpty() ? "" : ": " + each.endReason()),
        each.endedOn() == null && each.until().isAfter(today));
  }

  private Map<String, String> persons() {
    Map<String, String> persons = new LinkedHashMap<>();
    persons.put("", "choose");
    people.all().stream()
        .filter(person -> person.active() && person.role() != Role.VIEWER)
        .forEach(person -> persons.put(person.id(), person.name()));
    return persons;
  }

  private void authorise(Context http) {
    Form form = Form.from(http);
    Person person =
        form.read(
            "person",
            typed ->
                people.all().stream()
                    .filter(each -> each.id().equals(typed) && each.active())
                    .findFirst()
                    .orElseThrow(() -> new Refused(SigningProblem.NO_PERSON)));
    Scope scope = form.read("scope", Scope::named);
    LocalDate from = form.read("from", SiteMoment::day);
    LocalDate until = form.read("until", SiteMoment::day);
    String basis = form.read("basis", text -> Text.needed("what it rests on", text, LONGEST));
    if (form.ok()) {
      Actor actor = Actor.of(http);
      Authorisation fresh =
          new Authorisation(
              0, person.number(), person.name(), scope, from, until, basis, actor.name(), null, "");
      try {
        database.write(
            People.act(actor, "authorise to " + scope.word(), basis),
            tx -> {
              signing.authorise(tx, person, fresh, actor);
              return fresh;
            });
        page.go(http, "/authorisations", person.name() + " may " + scope.word() + ".");
        return;
      } catch (Refused refused) {
        form.complain(
            refused.problem() == SigningProblem.DATES ? "until" : "person", refused.getMessage());
      }
    }
    list(http, 422, form);
  }

  private void end(Context http) {
    Form form = Form.from(http);
    String number = http.pathParam("number");
    if (!number.matches("\\d{1,15}")) {
      throw new NotFoundResponse();
    }
    String reason = form.read("end-reason", text -> Text.needed("the reason", text, LONGEST));
    if (form.ok()) {
      try {
        database.write(
            People.act(Actor.of(http), "end authorisation", reason),
            tx -> {
              signing.end(tx, Long.parseLong(number), today(), reason);
              return number;
            });
        page.go(http, "/authorisations", "A-" + number + " has ended.");
        return;
      } catch (Refused refused) {
        form.complain(refused);
      }
    }
    form.put("from", today().toString());
    list(http, 422, form);
  }

  private Standard standard(Context http) {
    return database
        .read(sql -> standards.find(sql, http.pathParam("code")))
        .orElseThrow(NotFoundResponse::new);
  }

  private void concession(Context http, int status, Form form) {
    Standard standard = standard(http);
    List<Long> certificates = standard.certificates().stream().map(Certificate::id).toList();
    Map<String, String> choices = new LinkedHashMap<>();
    standard
        .certificates()
        .forEach(c -> choices.put(Long.toString(c.id()), c.number() + ", due " + c.dueOn()));
    Map<String, Object> model = new HashMap<>();
    model.put("standard", standard);
    model.put("href", "/standards/" + PathSegment.of(standard.code()));
    model.put("form", form);
    model.put("certificates", choices);
    model.put("rows", concessions(standard, certificates));
    page.show(http, status, "signing/concession", model);
  }

  /** A concession in words. */
  record ConcessionRow(
      String number, String certificate, String until, String reason, String measure, String by) {}

  private List<ConcessionRow> concessions(Standard standard, List<Long> certificates) {
    List<ConcessionRow> rows = new ArrayList<>();
    for (StandardConcession each : database.read(sql -> signing.concessions(sql, certificates))) {
      String certificate =
          standard.certificates().stream()
              .filter(c -> c.id() == each.certificate())
              .map(Certificate::number)
              .findFirst()
              .orElse("");
      rows.add(
          new ConcessionRow(
              each.number(),
              certificate,
              each.until().toString(),
              each.reason(),
              each.measure(),
              each.grantedByName()));
    }
    return rows;
  }

  private void permit(Context http) {
    Standard standard = standard(http);
    Form form = Form.from(http);
    Certificate certificate =
        form.read(
            "certificate",
            typed ->
                standard.certificates().stream()
                    .filter(c -> Long.toString(c.id()).equals(typed))
                    .findFirst()
                    .orElseThrow(() -> new Refused(SigningProblem.NO_CERTIFICATE)));
    LocalDate until = form.read("until", SiteMoment::day);
    String reason = form.read("reason", text -> Text.needed("the reason", text, LONGEST));
    String measure =
        form.read("measure", text -> Text.needed("what makes up for it", text, LONGEST));
    if (form.ok() && !until.isAfter(certificate.dueOn()) && standard.inUse()) {
      form.complain(
          "until", Refused.say(SigningProblem.UNTIL_BEFORE_DUE, certificate.dueOn(), until));
    }
    if (!form.ok()) {
      concession(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    StandardConcession fresh =
        new StandardConcession(
            0, certificate.id(), Long.parseLong(actor.id()), actor.name(), until, reason, measure);
    long id =
        database.write(
            People.act(actor, "concession for a standard", reason),
            tx -> signing.permit(tx, fresh));
    page.go(
        http,
        "/standards/" + PathSegment.of(standard.code()) + "/concession",
        "SC-" + id + " stands. It doesn't help whoever granted it: another person signs.");
  }
}
