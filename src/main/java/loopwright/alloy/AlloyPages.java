package loopwright.alloy;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.ChangeNote;
import loopwright.units.Numbers;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/** Groups of alloys, read by everybody, kept by engineers. */
public final class AlloyPages implements Pages {
  private static final Map<String, String> FERROUS = new LinkedHashMap<>();

  static {
    FERROUS.put("", "not said");
    FERROUS.put("yes", "yes, alloys of iron");
    FERROUS.put("no", "no");
  }

  private final Database database;
  private final Page page;
  private final AlloyBook alloys;

  public AlloyPages(Database database, Page page, AlloyBook alloys) {
    this.database = database;
    this.page = page;
    this.alloys = alloys;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/alloys", Permission.READ, this::list);
    routes.post("/alloys/begin", Permission.DECIDE, this::begin);
    routes.get("/alloys/new", Permission.DECIDE, http -> show(http, 200, null, Form.blank()));
    routes.post("/alloys/new", Permission.DECIDE, this::add);
    routes.get("/alloys/{id}", Permission.DECIDE, this::ask);
    routes.post("/alloys/{id}", Permission.DECIDE, this::change);
  }

  record Row(
      long id, String name, String ferrous, String slope, String source, List<String> alloys) {}

  private void list(Context http) {
    List<Row> rows = database.read(alloys::groups).stream().map(AlloyPages::row).toList();
    page.show(http, "alloy/list", Map.of("rows", rows));
  }

  private static Row row(AlloyBook.Group group) {
    GroupDetails details = group.details();
    Boolean ferrous = details.ferrous();
    BigDecimal slope = details.relativeSlope();
    return new Row(
        group.id(),
        details.name(),
        ferrous == null ? "not said" : ferrous ? "yes" : "no",
        slope == null ? "not known" : Numbers.plain(slope),
        details.source(),
        details.alloys());
  }

  private void begin(Context http) {
    Act act = People.act(Actor.of(http), "begin alloy groups", "Groups of common practice.");
    database.write(
        act,
        tx -> {
          alloys.begin(tx);
          return act;
        });
    page.go(http, "/alloys", "Groups of common practice are entered. Look them through.");
  }

  private void add(Context http) {
    Form form = Form.from(http);
    Optional<GroupDetails> details = details(form);
    String reason = form.read("reason", AlloyPages::reason);
    if (details.isPresent() && form.ok()) {
      Act act = People.act(Actor.of(http), "add alloy group", reason);
      if (done(form, () -> database.write(act, tx -> alloys.add(tx, details.get())))) {
        page.go(http, "/alloys", "Group " + details.get().name() + " is entered.");
        return;
      }
    }
    show(http, 422, null, form);
  }

  private void ask(Context http) {
    AlloyBook.Group group = group(http);
    show(http, 200, group, form(group));
  }

  private void change(Context http) {
    AlloyBook.Group group = group(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(group.version()))) {
      stale(http, group, form);
      return;
    }
    Optional<GroupDetails> details = details(form);
    String reason = form.read("reason", AlloyPages::reason);
    if (details.isPresent() && form.ok()) {
      Act act = People.act(Actor.of(http), "change alloy group", reason);
      Runnable work =
          () ->
              database.write(
                  act,
                  tx -> {
                    alloys.change(tx, group.id(), group.version(), details.get());
                    return act;
                  });
      if (done(form, work)) {
        page.go(http, "/alloys", "Group " + details.get().name() + " is changed.");
        return;
      }
    }
    show(http, 422, group, form);
  }

  private void stale(Context http, AlloyBook.Group group, Form form) {
    String by =
        database.read(sql -> alloys.lastChange(sql, group.id())).map(AlloyPages::told).orElse("");
    form.complain(Refused.say(DbProblem.STALE) + by);
    show(http, 409, group, form.at(Integer.toString(group.version())));
  }

  private static String told(ChangeNote last) {
    return " The last change was by " + last.by() + ": " + last.reason();
  }

  private void show(Context http, int status, AlloyBook.@Nullable Group group, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("ferrous", FERROUS);
    model.put("title", group == null ? "New alloy group" : group.details().name());
    model.put(
        "action", group == null ? "/alloys/new" : "/alloys/" + PathSegment.of("" + group.id()));
    model.put("now", group != null && status == 409 ? List.of(row(group)) : List.of());
    page.show(http, status, "alloy/edit", model);
  }

  private AlloyBook.Group group(Context http) {
    try {
      long id = Long.parseLong(http.pathParam("id"));
      return database.read(sql -> alloys.group(sql, id)).orElseThrow(NotFoundResponse::new);
    } catch (NumberFormatException noNumber) {
      throw new NotFoundResponse();
    }
  }

  private static Form form(AlloyBook.Group group) {
    GroupDetails details = group.details();
    Boolean ferrous = details.ferrous();
    BigDecimal slope = details.relativeSlope();
    Map<String, String> fields = new HashMap<>();
    fields.put("name", details.name());
    fields.put("ferrous", ferrous == null ? "" : ferrous ? "yes" : "no");
    fields.put("slope", slope == null ? "" : Numbers.plain(slope));
    fields.put("source", details.source());
    fields.put("alloys", String.join("\n", details.alloys()));
    return Form.of(fields).at(Integer.toString(group.version()));
  }

  private static Optional<GroupDetails> details(Form form) {
    String name = form.text("name", 60);
    Optional<BigDecimal> slope =
        form.optional(
            "slope",
            typed ->
                GroupDetails.checked(
                    Numbers.read(typed)
                        .orElseThrow(() -> new Refused(AlloyProblem.BAD_SLOPE, typed.strip()))));
    String source = form.optional("source", text -> Text.kept("the source", text, 200)).orElse("");
    String ferrous = form.typed("ferrous");
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        form.<@Nullable GroupDetails>read(
            "alloys",
            lines ->
                new GroupDetails(
                    name,
                    ferrous.isEmpty() ? null : Boolean.valueOf(ferrous.equals("yes")),
                    slope.orElse(null),
                    source,
                    lines.lines().toList())));
  }

  private static String reason(String typed) {
    return Text.needed("the reason", typed, 400);
  }

  private static boolean done(Form form, Runnable work) {
    try {
      work.run();
      return true;
    } catch (Refused refused) {
      form.complain(
          refused.problem() == AlloyProblem.GROUP_TAKEN ? "name" : "alloys",
          String.valueOf(refused.getMessage()));
      return false;
    }
  }
}
