package loopwright.kit;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.db.Database;
import loopwright.loop.PartSet;
import loopwright.loop.Proposed;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.register.Register;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Kits: the list, one with its curves, making, dissolving, fitting the whole of it. */
public final class KitPages implements Pages, PartPanel {
  private static final int MOST = 500;
  private static final int CURVES = 12;
  private static final int NAME = 80;
  private static final int NOTE = 2000;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Proposed proposed;
  private final Calibrations calibrations;
  private final Kits kits;
  private final Supplier<ZoneId> zone;

  /**
   * @param zone on whose clock moments are shown; a kit belongs to no site
   */
  public KitPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Proposed proposed,
      Calibrations calibrations,
      Kits kits,
      Supplier<ZoneId> zone) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.proposed = proposed;
    this.calibrations = calibrations;
    this.kits = kits;
    this.zone = zone;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/kits", Permission.READ, this::list);
    routes.get("/kits/new", Permission.RECORD, http -> showNew(http, 200, Form.fromQuery(http)));
    routes.post("/kits", Permission.RECORD, this::make);
    routes.get("/kits/{number}", Permission.READ, http -> showOne(http, 200, Form.blank()));
    routes.get("/kits/{number}/assemble", Permission.RECORD, this::assemble);
    routes.post("/kits/{number}/dissolve", Permission.RECORD, this::dissolve);
  }

  record PartLine(long id, String slot, String words) {}

  record CurveLine(
      String href, String number, String when, String place, String stage, String verdict) {}

  record Row(
      String href,
      String number,
      String name,
      List<PartLine> parts,
      String where,
      boolean together,
      @Nullable String dissolved,
      String made,
      String note,
      @Nullable CurveLine newest,
      @Nullable String assembleHref) {}

  private void list(Context http) {
    boolean all = "all".equals(http.queryParam("show"));
    String loop = Optional.ofNullable(http.queryParam("loop")).orElse("").strip();
    Map<String, Object> model = new HashMap<>();
    model.put(
        "rows",
        database.read(
            sql -> kits.newest(sql, all, MOST).stream().map(kit -> row(sql, kit, loop)).toList()));
    model.put("all", all);
    model.put("loop", loop);
    page.show(http, "kit/list", model);
  }

  private Row row(DSLContext sql, Kit kit, String loop) {
    Kits.Place place = kits.place(sql, kit);
    return new Row(
        kit.href(),
        kit.number(),
        kit.name(),
        parts(sql, kit.set()),
        place.words(),
        place.together(),
        kit.dissolved(),
        kit.madeBy() + ", " + SiteMoment.shown(kit.madeAt(), zone.get()),
        kit.note(),
        curves(sql, kit.set(), 1).stream().findFirst().orElse(null),
        kit.stands() && !loop.isEmpty()
            ? kit.href() + "/assemble?loop=" + URLEncoder.encode(loop, StandardCharsets.UTF_8)
            : null);
  }

  private List<PartLine> parts(DSLContext sql, PartSet set) {
    Map<Long, Component> found = register.components(sql, set.components());
    List<PartLine> lines = new ArrayList<>();
    set.slots()
        .forEach(
            slot -> {
              long number = set.part(slot).number();
              Component part = found.get(number);
              lines.add(new PartLine(number, slot.word(), part == null ? "?" : part.inWords()));
            });
    return lines;
  }

  private List<CurveLine> curves(DSLContext sql, PartSet set, int most) {
    return calibrations.ofSet(sql, set, most).stream().map(this::line).toList();
  }

  private CurveLine line(Calibrated c) {
    return new CurveLine(
        "/calibrations/" + c.number(),
        c.number(),
        SiteMoment.shown(c.measuredAt(), zone.get()),
        c.place(),
        c.stage().word(),
        c.outcome());
  }

  private void showNew(Context http, int status, Form form) {
    PartSet set = PartSet.read(form.typed("set")).orElseThrow(() -> new Refused(KitProblem.NO_SET));
    Map<String, Object> model = new HashMap<>();
    model.put("parts", database.read(sql -> parts(sql, set)));
    model.put("set", set.fingerprint());
    model.put("form", form);
    page.show(http, status, "kit/new", model);
  }

  private void make(Context http) {
    Form form = Form.from(http);
    String name = form.read("name", text -> Text.needed("the name", text, NAME));
    String note = form.read("note", text -> Text.kept("the note", text, NOTE));
    PartSet set = PartSet.read(form.typed("set")).orElseThrow(() -> new Refused(KitProblem.NO_SET));
    if (form.ok()) {
      try {
        long kit =
            database.write(
                People.act(Actor.of(http), "make kit", name), tx -> kits.make(tx, name, set, note));
        page.go(http, "/kits/KIT-" + kit, name + " is kept together.");
        return;
      } catch (Refused refused) {
        if (refused.problem() == KitProblem.NAME_TAKEN) {
          form.complain("name", refused.getMessage());
        } else {
          form.complain(refused);
        }
      }
    }
    showNew(http, 422, form);
  }

  private long number(DSLContext sql, Context http) {
    String number = http.pathParam("number");
    if (!number.matches("KIT-\\d{1,15}")
        || !kits.exists(sql, Long.parseLong(number.substring(4)))) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(number.substring(4));
  }

  private void showOne(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Kit kit = kits.one(sql, number(sql, http));
          model.put("kit", row(sql, kit, ""));
          model.put("curves", curves(sql, kit.set(), CURVES));
          model.put(
              "curveHref",
              "/bench/curve?set="
                  + URLEncoder.encode(kit.set().fingerprint(), StandardCharsets.UTF_8));
          return kit;
        });
    model.put("form", form);
    page.show(http, status, "kit/one", model);
  }

  /** To the assembly of a loop with the whole kit filled in; nothing is recorded by that. */
  private void assemble(Context http) {
    Form form = Form.fromQuery(http);
    String tag = form.typed("loop").strip();
    try {
      String to =
          database.read(
              sql -> {
                Kit kit = kits.one(sql, number(sql, http));
                if (kit.dissolved() != null) {
                  throw new Refused(KitProblem.DISSOLVED, kit.number(), kit.dissolved());
                }
                Point loop =
                    plant
                        .pointTagged(sql, tag)
                        .orElseThrow(() -> new Refused(KitProblem.NO_LOOP, tag));
                return "/loops/"
                    + PathSegment.of(loop.tag())
                    + "/assembly?"
                    + proposed.query(sql, kit.set().asChain());
              });
      http.redirect(to, HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      form.complain("loop", refused.getMessage());
      showOne(http, 422, form);
    }
  }

  private void dissolve(Context http) {
    Form form = Form.from(http);
    String reason = form.read("reason", text -> Text.needed("the reason", text, NOTE));
    if (form.ok()) {
      try {
        long kit =
            database.write(
                People.act(Actor.of(http), "dissolve kit", reason),
                tx -> {
                  long number = number(tx.sql(), http);
                  kits.dissolve(tx, number, reason);
                  return number;
                });
        page.go(http, "/kits/KIT-" + kit, "Dissolved: its parts go their own ways.");
        return;
      } catch (Refused refused) {
        form.complain(refused);
      }
    }
    showOne(http, 422, form);
  }

  record OfPart(String href, String words) {}

  @Override
  public String template() {
    return "kit/of-part";
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    return kits.holding(sql, List.of(part.number())).values().stream()
        .map(kit -> new OfPart(kit.href(), kit.number() + ", " + kit.name()))
        .toList();
  }
}
