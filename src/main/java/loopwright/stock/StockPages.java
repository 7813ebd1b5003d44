package loopwright.stock;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.loop.Need;
import loopwright.matching.PartKind;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.Sort;
import loopwright.register.Stock;
import loopwright.units.Length;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** Spares by sort, what is missing, and the decision how many there are to be. */
public final class StockPages implements Pages, Need.Source {
  private static final int MOST_TOLD = 20;

  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final StockLevels levels;
  private final InstantSource clock;

  public StockPages(Database database, Page page, FamilyBook families, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.levels = new StockLevels(families);
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/stock", Permission.READ, this::list);
    routes.get("/stock/minimum", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/stock/minimum", Permission.PLAN, this::decide);
  }

  record Row(
      String family,
      String kind,
      String length,
      int inStock,
      int fitted,
      int quarantined,
      String least,
      int missing,
      int suggested,
      String href,
      String partsHref) {}

  record Chip(String label, String href, boolean on) {}

  record Decision(int least, String who, String since, String reason) {}

  private void list(Context http) {
    String wanted = Optional.ofNullable(http.queryParam("family")).orElse("");
    boolean onlyMissing = "yes".equals(http.queryParam("missing"));
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          List<Family> known = families.all(sql);
          List<Family> of =
              known.stream()
                  .filter(family -> wanted.isEmpty() || family.code().equals(wanted))
                  .toList();
          model.put(
              "rows",
              levels.levels(sql, of, clock.instant()).stream()
                  .filter(level -> !onlyMissing || level.missing() > 0)
                  .map(level -> row(level, units))
                  .toList());
          model.put("chips", chips(known, wanted, onlyMissing));
          model.put("ofNoSort", levels.ofNoSort(sql));
          return model;
        });
    page.show(http, "stock/list", model);
  }

  private static List<Chip> chips(List<Family> known, String wanted, boolean onlyMissing) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("every family", address("", onlyMissing), wanted.isEmpty()));
    known.forEach(
        family ->
            chips.add(
                new Chip(
                    family.code(),
                    address(family.code(), onlyMissing),
                    family.code().equals(wanted))));
    chips.add(new Chip("only what is missing", address(wanted, !onlyMissing), onlyMissing));
    return chips;
  }

  private static String address(String family, boolean onlyMissing) {
    String query =
        Stream.of(
                family.isEmpty() ? "" : "family=" + PathSegment.of(family),
                onlyMissing ? "missing=yes" : "")
            .filter(part -> !part.isEmpty())
            .reduce((one, other) -> one + "&" + other)
            .map(text -> "?" + text)
            .orElse("");
    return "/stock" + query;
  }

  private static Row row(Level level, UnitsShown units) {
    Stock.Count count = level.count();
    Sort sort = count.sort();
    String query =
        "family="
            + PathSegment.of(level.family())
            + "&kind="
            + PathSegment.of(sort.kind().word())
            + "&length="
            + sort.length().metres().toPlainString();
    return new Row(
        level.family(),
        sort.kind().word(),
        units.both(sort.length()),
        count.inStock(),
        count.fitted(),
        count.quarantined(),
        level.minimum() == null ? "" : String.valueOf(level.least()),
        level.missing(),
        level.suggested().parts(),
        "/stock/minimum?" + query,
        "/parts?" + query + "&length-unit=m");
  }

  /** The sort that the address or the form names; an unknown one isn't there. */
  private Sort sort(DSLContext sql, Context http) {
    Family family = families.named(sql, named(http, "family")).orElseThrow(NotFoundResponse::new);
    PartKind kind = PartKind.named(named(http, "kind")).orElseThrow(NotFoundResponse::new);
    try {
      Sort sort = new Sort(family.id(), kind, Length.ofMetres(named(http, "length")));
      StockLevels.refuseNotOffered(family, sort);
      return sort;
    } catch (NumberFormatException noLength) {
      throw new NotFoundResponse();
    }
  }

  private static String named(Context http, String name) {
    return Optional.ofNullable(http.queryParam(name)).orElse("");
  }

  private void show(Context http, int status, Form form) {
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Sort sort = sort(sql, http);
          Family family = families.family(sql, sort.family()).orElseThrow();
          Level level =
              levels.levels(sql, List.of(family), clock.instant()).stream()
                  .filter(each -> each.count().sort().equals(sort))
                  .findFirst()
                  .orElse(
                      new Level(
                          family.code(),
                          new Stock.Count(sort, 0, 0, 0),
                          new Suggestion(0, 0),
                          null));
          List<Minimum> story = levels.story(sql, sort);
          model.put("row", row(level, units));
          model.put("reasoning", level.suggested().reasoning());
          model.put("story", story.stream().map(StockPages::decision).toList());
          form.at(String.valueOf(story.isEmpty() ? 0 : story.get(0).id()));
          return model;
        });
    model.put("form", form);
    page.show(http, status, "stock/minimum", model);
  }

  private static Decision decision(Minimum minimum) {
    return new Decision(
        minimum.least(),
        minimum.who(),
        minimum.since().toString().substring(0, 10),
        minimum.reason());
  }

  private void decide(Context http) {
    Form form = Form.from(http);
    Integer least = form.read("least", StockPages::count);
    String reason = form.read("reason", text -> Text.needed("the reason", text, 400));
    Sort sort = database.read(sql -> sort(sql, http));
    if (form.ok()) {
      try {
        database.write(
            People.act(Actor.of(http), "set minimum stock", reason),
            tx -> {
              levels.decide(tx, sort, least, reason, seen(form));
              return sort;
            });
        page.go(http, "/stock", "Decided: " + least + " are to lie in stock.");
        return;
      } catch (Refused refused) {
        form.complain(refused);
      }
    }
    show(http, form.ok() || form.general().isEmpty() ? 422 : 409, form);
  }

  private static long seen(Form form) {
    return form.version().matches("\\d{1,18}") ? Long.parseLong(form.version()) : -1;
  }

  private static int count(String text) {
    if (!text.strip().matches("\\d{1,4}")) {
      throw new Refused(StockProblem.NO_COUNT, text.strip());
    }
    return Integer.parseInt(text.strip());
  }

  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return levels.missing(sql, now).stream().limit(MOST_TOLD).map(StockPages::need).toList();
  }

  private static Need need(Level level) {
    Row row = row(level, UnitsShown.METRIC);
    return new Need(
        "attention",
        7,
        row.href(),
        row.kind() + " " + row.length(),
        "family " + level.family(),
        null,
        "%s in stock, %s are to be.".formatted(level.count().inStock(), level.least()),
        level.minimum() == null ? null : level.minimum().since(),
        "planner",
        "Order %s, exactly of this length; another length is no spare.".formatted(level.missing()));
  }
}
