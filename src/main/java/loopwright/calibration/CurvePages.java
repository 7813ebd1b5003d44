package loopwright.calibration;

import io.javalin.http.Context;
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
import java.util.stream.Collectors;
import loopwright.curve.Grid;
import loopwright.curve.SignConvention;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.loop.Configuration;
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
  private final InstantSource clock;

  public CurvePages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      RegisteredProfiles profiles,
      Calibrations calibrations,
      Standards standards,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.configuration = configuration;
    this.profiles = profiles;
    this.calibrations = calibrations;
    this.standards = standards;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/curve", Permission.RECORD, this::open);
    routes.post("/loops/{tag}/curve/judged", Permission.RECORD, this::judged);
    routes.post("/loops/{tag}/curve", Permission.RECORD, this::submit);
  }

  private OpenedLoop opened(Context http) {
    return database.read(sql -> opened(sql, http.pathParam("tag")));
  }

  private OpenedLoop opened(DSLContext sql, String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    ZoneId zone =
        plant
            .place(sql, point.id())
            .map(PointPlace::site)
            .orElseThrow(NotFoundResponse::new)
            .zone();
    return new OpenedLoop(point, zone, configuration.at(sql, point.id().number(), clock.instant()));
  }

  private static long person(Context http) {
    return Long.parseLong(Actor.of(http).id());
  }

  private void open(Context http) {
    OpenedLoop opened = opened(http);
    Optional<DraftStore.Draft> draft =
        database.read(sql -> drafts.find(sql, opened.number(), person(http)));
    Form form = draft.map(DraftStore.Draft::form).orElseGet(() -> fresh(opened, Actor.of(http)));
    String saved = draft.map(d -> SiteMoment.shown(d.savedAt(), opened.zone())).orElse(null);
    show(http, 200, opened, typed(form), saved);
  }

  /** The suiting profile, its gaps filled in, now. */
  private Form fresh(OpenedLoop opened, Actor actor) {
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
                "alloy", opened.point().details().surroundings().shaftAlloy(),
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

  private void show(Context http, int status, OpenedLoop opened, TypedCurve typed) {
    show(http, status, opened, typed, null);
  }

  private void show(
      Context http, int status, OpenedLoop opened, TypedCurve typed, @Nullable String draftSaved) {
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

  private EntryShown entry(OpenedLoop opened, TypedCurve typed, @Nullable String draftSaved) {
    return new EntryShown(
        opened.point().tag(),
        opened.href() + "/curve",
        opened.href(),
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

  private String parts(OpenedLoop opened) {
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
    OpenedLoop opened = opened(http);
    Form form = Form.from(http);
    switch (form.typed("do")) {
      case "load" -> load(http, opened, form);
      case "paste" -> paste(http, opened, form);
      case "draft" -> draft(http, opened, form);
      case "discard" -> discard(http, opened);
      default -> keep(http, opened, form);
    }
  }

  private void load(Context http, OpenedLoop opened, Form form) {
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

  private void paste(Context http, OpenedLoop opened, Form form) {
    new BroughtIn(form).block();
    show(http, form.ok() ? 200 : 422, opened, typed(form));
  }

  private void draft(Context http, OpenedLoop opened, Form form) {
    database.write(
        act(http, "save curve draft", "not finished yet"),
        tx -> drafts.save(tx, opened.number(), person(http), form));
    page.go(http, opened.href() + "/curve", "Kept as a draft; it waits for you here.");
  }

  private void discard(Context http, OpenedLoop opened) {
    if (database.read(sql -> drafts.find(sql, opened.number(), person(http))).isPresent()) {
      database.write(
          act(http, "throw curve draft away", "no longer needed"),
          tx -> {
            drafts.discard(tx, opened.number(), person(http));
            return opened;
          });
    }
    page.go(http, opened.href() + "/curve", "The draft is thrown away.");
  }

  private void keep(Context http, OpenedLoop opened, Form form) {
    TypedCurve typed = typed(form);
    String reason = form.text("reason", 2000);
    Optional<NewCalibration> fresh = typed.fresh(opened.number(), opened.zone(), clock.instant());
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

  private void askAboutOrder(OpenedLoop opened, TypedCurve typed, NewCalibration fresh) {
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
      Context http, OpenedLoop opened, TypedCurve typed, NewCalibration fresh, String reason) {
    try {
      String number =
          database.write(
              act(http, "calibration", reason),
              tx -> {
                drafts.discard(tx, opened.number(), person(http));
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
