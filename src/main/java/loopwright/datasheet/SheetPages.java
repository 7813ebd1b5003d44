package loopwright.datasheet;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.matching.PartKind;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.ChangeNote;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Data sheets with all their versions, read by everybody, kept by engineers. */
public final class SheetPages implements Pages {
  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final DataSheets sheets;

  public SheetPages(Database database, Page page, FamilyBook families, DataSheets sheets) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.sheets = sheets;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/sheets", Permission.READ, this::list);
    routes.get("/sheets/of", Permission.READ, this::ask);
    routes.post("/sheets/of", Permission.DECIDE, this::record);
  }

  record Row(String kind, String whose, String href, Map<String, String> facts) {}

  /** What a version changed against the one before. */
  record Version(int number, Map<String, String> changed, ChangeNote made) {}

  private void list(Context http) {
    List<Row> rows =
        database.read(
            sql -> {
              Map<Long, String> codes = families.codes(sql);
              return sheets.all(sql).stream().map(sheet -> row(sheet, codes)).toList();
            });
    page.show(http, "datasheet/list", Map.of("rows", rows));
  }

  private static Row row(DataSheet sheet, Map<Long, String> codes) {
    SheetAddress address = SheetAddress.of(sheet.subject(), codes);
    return new Row(
        sheet.subject().kind().word(),
        address.whose(),
        address.href(),
        SheetWords.of(sheet.subject(), sheet.details()));
  }

  private void ask(Context http) {
    Subject subject = database.read(sql -> subject(sql, Form.fromQuery(http)));
    Optional<DataSheet> newest = newest(subject);
    Form form =
        SheetForm.of(
            newest.map(DataSheet::details).orElse(SheetDetails.NOTHING_SAID),
            newest.map(DataSheet::version).orElse(0));
    show(http, 200, subject, form);
  }

  private Optional<DataSheet> newest(Subject subject) {
    return database.read(sql -> sheets.versions(sql, subject)).stream().findFirst();
  }

  private void record(Context http) {
    Form form = Form.from(http);
    Subject subject = database.read(sql -> subject(sql, form));
    Optional<DataSheet> newest = newest(subject);
    int present = newest.map(DataSheet::version).orElse(0);
    if (form.stale(Integer.toString(present))) {
      form.complain(Refused.say(DbProblem.STALE) + newest.map(SheetPages::last).orElse(""));
      show(http, 409, subject, form.at(Integer.toString(present)));
      return;
    }
    Optional<SheetDetails> details = SheetForm.read(form);
    String reason = form.read("reason", typed -> Text.needed("the reason", typed, 400));
    if (details.isPresent() && form.ok() && done(http, form, subject, present, reason, details)) {
      SheetAddress address = database.read(sql -> SheetAddress.of(subject, families.codes(sql)));
      page.go(http, address.href(), "Data sheet recorded.");
      return;
    }
    show(http, 422, subject, form);
  }

  private static String last(DataSheet sheet) {
    return " The last change was by " + sheet.made().by() + ": " + sheet.made().reason();
  }

  private boolean done(
      Context http,
      Form form,
      Subject subject,
      int seen,
      String reason,
      Optional<SheetDetails> details) {
    Act act = People.act(Actor.of(http), "data sheet", reason);
    try {
      database.write(
          act,
          tx -> {
            sheets.record(tx, subject, seen, details.orElseThrow());
            return act;
          });
      return true;
    } catch (Refused refused) {
      form.complain(refused);
      return false;
    }
  }

  private Subject subject(DSLContext sql, Form fields) {
    PartKind kind = PartKind.named(fields.typed("kind")).orElseThrow(NotFoundResponse::new);
    String family = fields.typed("family");
    if (!family.isBlank()) {
      return families
          .named(sql, family)
          .map(Family::id)
          .map(id -> Subject.ofFamily(kind, id))
          .orElseThrow(NotFoundResponse::new);
    }
    if (fields.typed("maker").isBlank() || fields.typed("model").isBlank()) {
      throw new Refused(SheetProblem.NO_SUBJECT);
    }
    return Subject.ofModel(kind, fields.typed("maker"), fields.typed("model"));
  }

  private void show(Context http, int status, Subject subject, Form form) {
    Map<String, Object> model = new HashMap<>();
    List<DataSheet> versions = database.read(sql -> sheets.versions(sql, subject));
    SheetAddress address = database.read(sql -> SheetAddress.of(subject, families.codes(sql)));
    model.put("form", form);
    model.put("subject", subject);
    model.put("address", address);
    model.put("nearProbe", subject.hasConnectorTowardProbe());
    model.put("nearDriver", subject.hasConnectorTowardDriver());
    model.put("driver", subject.isDriver());
    model.put("entity", subject.isDriver() || subject.isBarrier());
    model.put("side", subject.isBarrier() ? "o" : "i");
    model.put("levels", SheetForm.levels());
    model.put("groups", SheetForm.groups());
    model.put("classes", SheetForm.classes());
    model.put(
        "facts", versions.isEmpty() ? Map.of() : SheetWords.of(subject, versions.get(0).details()));
    model.put("versions", changes(subject, versions));
    page.show(http, status, "datasheet/sheet", model);
  }

  private static List<Version> changes(Subject subject, List<DataSheet> versions) {
    List<Version> changes = new ArrayList<>();
    for (int i = 0; i < versions.size(); i++) {
      DataSheet sheet = versions.get(i);
      SheetDetails before =
          i + 1 < versions.size() ? versions.get(i + 1).details() : SheetDetails.NOTHING_SAID;
      changes.add(
          new Version(
              sheet.version(),
              SheetWords.changed(
                  SheetWords.of(subject, before), SheetWords.of(subject, sheet.details())),
              sheet.made()));
    }
    return changes;
  }
}
