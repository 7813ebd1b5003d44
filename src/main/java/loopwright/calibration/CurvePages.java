package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import loopwright.curve.Grid;
import loopwright.curve.SignConvention;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.loop.Configuration;
import loopwright.loop.PartSet;
import loopwright.loop.Slot;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The page on which a curve is typed; the server judges it while one types. */
public final class CurvePages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Configuration configuration;
  private final RegisteredProfiles profiles;
  private final Calibrations calibrations;
  private final Standards standards;
  private final DraftStore drafts = new DraftStore();
  private final MeasuredSets sets;
  private final Supplier<ZoneId> benchZone;
  private final InstantSource clock;

  /**
   * @param benchZone on whose clock moments on the bench are typed
   */
  public CurvePages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      RegisteredProfiles profiles,
      Calibrations calibrations,
      Standards standards,
      Supplier<ZoneId> benchZone,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.configuration = configuration;
    this.profiles = profiles;
    this.calibrations = calibrations;
    this.standards = standards;
    this.sets = new MeasuredSets(register, configuration);
    this.benchZone = benchZone;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/curve", Permission.RECORD, this::open);
    routes.post("/loops/{tag}/curve/judged", Permission.RECORD, this::judged);
    routes.post("/loops/{tag}/curve", Permission.RECORD, this::submit);
    routes.get("/loops/{tag}/curve/stand-in", Permission.RECORD, this::standIn);
    routes.get("/bench/curve", Permission.RECORD, this::open);
    routes.post("/bench/curve/judged", Permission.RECORD, this::judged);
    routes.post("/bench/curve", Permission.RECORD, this::submit);
  }

  private Opened opened(Context http) {
    String set = http.queryParam("set");
    boolean bench = !http.pathParamMap().containsKey("tag");
    return database.read(
        sql -> {
          if (bench) {
            PartSet measured = sets.read(sql, set == null ? "" : set);
            return new Opened(
                null, benchZone.get(), new TakenWith.Bench(measured), measured.chain());
          }
          Opened loop = opened(sql, http.pathParam("tag"));
          return set == null ? loop : stoodIn(loop, sets.read(sql, set));
        });
  }

  private static Opened stoodIn(Opened loop, PartSet set) {
    return new Opened(
        loop.point(), loop.zone(), new TakenWith.StoodIn(loop.number(), set), set.chain());
  }

  private Opened opened(DSLContext sql, String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    ZoneId zone =
        plant
            .place(sql, point.id())
            .map(PointPlace::site)
            .orElseThrow(NotFoundResponse::new)
            .zone();
    long number = point.id().number();
    return new Opened(
        point, zone, new TakenWith.Fitted(number), configuration.at(sql, number, clock.instant()));
  }

  /** From the serial of what stood in to the page for that very set. */
  private void standIn(Context http) {
    Opened loop = database.read(sql -> opened(sql, http.pathParam("tag")));
    Form asked = Form.fromQuery(http);
    String serial = asked.typed("serial").strip();
    try {
      Slot slot = Slot.named(asked.typed("slot")).orElse(Slot.PATH_1);
      PartSet set =
          database.read(
              sql ->
                  sets.standingIn(
                      sql,
                      PartSet.of(loop.chain())
                          .orElseThrow(
                              () -> new Refused(CalibrationProblem.NO_COMBINATION, loop.name())),
                      slot,
                      serial));
      http.redirect(stoodIn(loop, set).href(), HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      Form form =
          fresh(loop, Actor.of(http)).put("slot", asked.typed("slot")).put("serial", serial);
      form.complain("serial", refused.getMessage());
      show(http, 422, loop, typed(form));
    }
  }

  private static long person(Context http) {
    return Long.parseLong(Actor.of(http).id());
  }

  private void open(Context http) {
    Opened opened = opened(http);
    Optional<DraftStore.Draft> draft =
        database.read(sql -> drafts.find(sql, opened.with(), person(http)));
    Form form = draft.map(DraftStore.Draft::form).orElseGet(() -> fresh(opened, Actor.of(http)));
    String saved = draft.map(d -> SiteMoment.shown(d.savedAt(), opened.zone())).orElse(null);
    show(http, 200, opened, typed(form), saved);
  }

  /** The suiting profile, its gaps filled in, now. */
  private Form fresh(Opened opened, Actor actor) {
    Optional<ToleranceProfiles.Stored> suiting =
        database.read(sql -> profiles.suiting(sql, opened.number(), opened.chain()));
    List<String> moment = List.of(SiteMoment.shown(clock.instant(), opened.zone()).split(" "));
    Form form =
        Form.of(
            Map.of(
                "on", moment.get(0),
                "time", moment.get(1),
                "performed-by", actor.name(),
                "stage", Stage.AS_FOUND.word(),
                "zero", Zero.MECHANICAL_TOUCH.word(),
                "alloy", opened.shaftAlloy(),
                "gap-unit", Unit.MICROMETRE.symbol(),
                "volts-unit", Unit.VOLT.symbol(),
                "sign", SignConvention.NEGATIVE.label()));
    suiting.ifPresent(stored -> grid(form, stored.profile().grids().get(0)));
    suiting.ifPresent(stored -> form.put("profile", stored.profile().code()));
    return form;
  }

  private static void grid(Form form, Grid grid) {
    form.put("gap-unit", grid.unit().symbol())
        .put("gap", grid.positions().stream().map(Numbers::plain).toList());
  }

  private TypedCurve typed(Form form) {
    return database.read(
        sql ->
            TypedCurve.of(form, profiles.newest(sql, form.typed("profile")), standards.all(sql)));
  }

  private void show(Context http, int status, Opened opened, TypedCurve typed) {
    show(http, status, opened, typed, null);
  }

  private void show(
      Context http, int status, Opened opened, TypedCurve typed, @Nullable String draftSaved) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", typed.form());
    model.put("entry", entry(opened, typed, draftSaved));
    model.put("judged", typed.shown(UnitsShown.of(http)).orElse(null));
    // what is wrong stands in the rows, and after an attempt to keep it above the form
    model.put("complaints", typed.form().ok() ? typed.complaints() : List.of());
    model.put("wrong", !typed.complaints().isEmpty());
    model.put("noCurve", typed.noCurve());
    model.put("live", false);
    page.show(http, status, "calibration/curve", model);
  }

  private EntryShown entry(Opened opened, TypedCurve typed, @Nullable String draftSaved) {
    return new EntryShown(
        opened.name(),
        opened.with().setup(),
        opened.href(),
        opened.judgedHref(),
        opened.backHref(),
        opened.zone().getId(),
        parts(opened),
        opened.fingerprint().isPresent(),
        profilesToChoose(typed.form()),
        ChosenStandards.choices(typed.form(), database.read(standards::all)),
        EntryShown.rows(typed),
        typed.questions(),
        new CurveForm(typed.form()).anythingTyped(),
        draftSaved);
  }

  private Map<String, String> profilesToChoose(Form form) {
    List<ToleranceProfiles.Stored> all = database.read(profiles::newest);
    Map<String, String> choices = new LinkedHashMap<>();
    if (all.stream().noneMatch(stored -> form.chosen("profile", stored.profile().code()))) {
      choices.put("", "choose");
    }
    all.forEach(stored -> choices.put(stored.profile().code(), stored.profile().name()));
    return choices;
  }

  private String parts(Opened opened) {
    Map<Long, Component> found = database.read(sql -> register.components(sql, opened.parts()));
    return opened.parts().stream()
        .map(found::get)
        .filter(Objects::nonNull)
        .map(Component::inWords)
        .collect(Collectors.joining(", "));
  }

  private void judged(Context http) {
    TypedCurve typed = typed(Form.from(http));
    typed.needProfile();
    List<String> complaints = new ArrayList<>(typed.form().complaints().values());
    complaints.addAll(typed.complaints());
    Map<String, Object> model = new HashMap<>();
    model.put("judged", typed.shown(UnitsShown.of(http)).orElse(null));
    model.put("complaints", complaints);
    model.put("wrong", false);
    model.put("noCurve", typed.noCurve());
    model.put("live", true);
    page.part(http, 200, "calibration/result", "judged", model);
  }

  private void submit(Context http) {
    Opened opened = opened(http);
    Form form = Form.from(http);
    switch (form.typed("do")) {
      case "load" -> load(http, opened, form);
      case "paste" -> paste(http, opened, form);
      case "draft" -> draft(http, opened, form);
      case "discard" -> discard(http, opened);
      default -> keep(http, opened, form);
    }
  }

  private void load(Context http, Opened opened, Form form) {
    UploadedFile file = http.uploadedFile("file");
    if (file == null) {
      new BroughtIn(form).file("", new byte[0]);
    } else {
      new BroughtIn(form).file(file.filename(), bytes(file));
    }
    show(http, form.ok() ? 200 : 422, opened, typed(form));
  }

  private static byte[] bytes(UploadedFile file) {
    try (InputStream in = file.content()) {
      return in.readAllBytes();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private void paste(Context http, Opened opened, Form form) {
    new BroughtIn(form).block();
    show(http, form.ok() ? 200 : 422, opened, typed(form));
  }

  private void draft(Context http, Opened opened, Form form) {
    database.write(
        act(http, "save curve draft", "not finished yet"),
        tx -> drafts.save(tx, opened.with(), person(http), form));
    page.go(http, opened.href(), "Kept as a draft; it waits for you here.");
  }

  private void discard(Context http, Opened opened) {
    if (database.read(sql -> drafts.find(sql, opened.with(), person(http))).isPresent()) {
      database.write(
          act(http, "throw curve draft away", "no longer needed"),
          tx -> {
            drafts.discard(tx, opened.with(), person(http));
            return opened;
          });
    }
    page.go(http, opened.href(), "The draft is thrown away.");
  }

  private void keep(Context http, Opened opened, Form form) {
    TypedCurve typed = typed(form);
    String reason = form.text("reason", 2000);
    Optional<NewCalibration> fresh = typed.fresh(opened.with(), opened.zone(), clock.instant());
    if (fresh.isEmpty()) {
      show(http, 422, opened, typed);
      return;
    }
    Optional<Calibrated> kept = database.read(sql -> calibrations.same(sql, fresh.get()));
    if (kept.isPresent()) {
      goTo(http, kept.get().number());
      return;
    }
    askAboutOthers(typed, fresh.get());
    askAboutPlaces(typed, fresh.get());
    askAboutOrder(opened, typed, fresh.get());
    if (form.ok()) {
      keep(http, opened, typed, fresh.get(), reason);
    } else {
      show(http, 422, opened, typed);
    }
  }

  private void askAboutOthers(TypedCurve typed, NewCalibration fresh) {
    List<Calibrated> others = database.read(sql -> calibrations.ofMoment(sql, fresh));
    if (!others.isEmpty() && !typed.confirmed()) {
      typed.ask(Refused.say(CalibrationProblem.OTHER_OF_THAT_MOMENT, others.get(0).number()));
    }
  }

  private void askAboutPlaces(TypedCurve typed, NewCalibration fresh) {
    if (!typed.confirmed()) {
      database.read(sql -> sets.elsewhere(sql, fresh)).forEach(typed::ask);
    }
  }

  private void askAboutOrder(Opened opened, TypedCurve typed, NewCalibration fresh) {
    if (!typed.confirmed()) {
      database
          .read(sql -> calibrations.outOfOrder(sql, fresh))
          .ifPresent(
              kept ->
                  typed.ask(
                      Refused.say(
                          CalibrationProblem.OUT_OF_ORDER,
                          kept.number(),
                          kept.stage().word(),
                          SiteMoment.shown(kept.measuredAt(), opened.zone()),
                          fresh.stage().word())));
    }
  }

  private void keep(
      Context http, Opened opened, TypedCurve typed, NewCalibration fresh, String reason) {
    try {
      String number =
          database.write(
              act(http, "calibration", reason),
              tx -> {
                drafts.discard(tx, opened.with(), person(http));
                return calibrations.keep(tx, fresh);
              });
      goTo(http, number);
    } catch (Refused refused) {
      Optional<Calibrated> first =
          refused.problem() == CalibrationProblem.ALREADY_KEPT
              ? database.read(sql -> calibrations.same(sql, fresh))
              : Optional.empty();
      if (first.isPresent()) {
        goTo(http, first.get().number());
      } else {
        typed.form().complain(refused);
        show(http, 422, opened, typed);
      }
    }
  }

  private void goTo(Context http, String number) {
    page.go(http, "/calibrations/" + number, "Kept as " + number + ".");
  }

  private static Act act(Context http, String what, String reason) {
    Actor actor = Actor.of(http);
    return new Act(Long.valueOf(actor.id()), actor.name(), actor.role().word(), what, reason);
  }
}
