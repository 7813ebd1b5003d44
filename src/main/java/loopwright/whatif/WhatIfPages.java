package loopwright.whatif;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.RegisteredProfiles;
import loopwright.cause.LengthOutlook;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Run;
import loopwright.db.Database;
import loopwright.exposure.ChannelsTold;
import loopwright.exposure.Effects;
import loopwright.lengthlaw.LengthLaws;
import loopwright.loop.Combinations;
import loopwright.loop.Judging;
import loopwright.loop.LoopPanel;
import loopwright.loop.Proposed;
import loopwright.matching.LengthSum;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.protection.EffectWords;
import loopwright.protection.GapSpan;
import loopwright.protection.MonitorTold;
import loopwright.time.Viewpoint;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * What other parts, or another length, would do to a loop. What was typed stands in the address.
 */
public final class WhatIfPages implements Pages, LoopPanel {
  private static final List<Unit> LENGTHS = List.of(Unit.METRE, Unit.FOOT);
  private static final String PARTS = "parts";

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Channels channels;
  private final Judging judging;
  private final Proposed proposed;
  private final RegisteredProfiles profiles;
  private final PresentLoops presents;
  private final LengthLaws laws;
  private final InstantSource clock;

  public WhatIfPages(
      Database database,
      Page page,
      Plant plant,
      Channels channels,
      Judging judging,
      Proposed proposed,
      RegisteredProfiles profiles,
      loopwright.calibration.Calibrations calibrations,
      LengthLaws laws,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.channels = channels;
    this.judging = judging;
    this.proposed = proposed;
    this.profiles = profiles;
    this.presents = new PresentLoops(calibrations);
    this.laws = laws;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/what-if/{tag}", Permission.READ, this::show);
  }

  record SlotLine(String field, String label) {}

  /**
   * @param says the lengths in words
   * @param drawing the chain on its ruler; empty where only lengths were typed
   * @param outlook null where nothing can be told
   */
  record Answer(
      String says,
      String drawing,
      String start,
      Outlook.@Nullable Shown outlook,
      List<String> cautions) {}

  /** What the driver is tuned for and what is fitted. */
  private record Asked(Length system, Length fitted, String drawing) {}

  private void show(Context http) {
    Map<String, Object> model = new HashMap<>();
    int status = database.read(sql -> fill(sql, http, model));
    page.show(http, status, "whatif/what-if", model);
  }

  private int fill(DSLContext sql, Context http, Map<String, Object> model) {
    Point point = plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
    UnitsShown units = UnitsShown.of(http);
    Form form = Form.fromQuery(http);
    if (!http.queryParamMap().containsKey("by")) {
      form = fitted(sql, point);
      form.put("total-unit", (units.metric() ? Unit.METRE : Unit.FOOT).symbol());
      form.put("system-unit", form.typed("total-unit"));
    }
    model.put("tag", point.tag());
    model.put("href", "/what-if/" + PathSegment.of(point.tag()));
    model.put("loopHref", "/loops/" + PathSegment.of(point.tag()));
    model.put("form", form);
    model.put("slots", slots());
    model.put("ways", ways());
    model.put("lengthUnits", LENGTHS.stream().map(Unit::symbol).toList());
    model.put("answer", answer(sql, point, form, units).orElse(null));
    return form.ok() ? 200 : 422;
  }

  private Form fitted(DSLContext sql, Point point) {
    ZoneId zone = plant.place(sql, point.id()).orElseThrow(NotFoundResponse::new).site().zone();
    return proposed.asFitted(sql, point.id().number(), zone).put("by", PARTS);
  }

  private static List<SlotLine> slots() {
    List<SlotLine> slots = new ArrayList<>();
    for (String field : List.of("probe", "path-1", "path-2", "driver")) {
      slots.add(
          new SlotLine(
              field,
              field.equals("path-1")
                  ? "cable"
                  : field.equals("path-2") ? "second cable or adapter" : field));
    }
    return slots;
  }

  private static Map<String, String> ways() {
    Map<String, String> ways = new LinkedHashMap<>();
    ways.put(PARTS, "these parts");
    ways.put("lengths", "only the lengths below");
    return ways;
  }

  private Optional<Answer> answer(DSLContext sql, Point point, Form form, UnitsShown units) {
    Judging.Judged now =
        judging
            .judge(
                sql,
                List.of(new Judging.Subject(point.id().number(), point.tag())),
                clock.instant())
            .get(0);
    Optional<Asked> asked =
        form.chosen("by", PARTS) ? ofParts(sql, point, form) : ofLengths(form, now);
    return asked.map(each -> answer(sql, point, now, each, units));
  }

  private Optional<Asked> ofParts(DSLContext sql, Point point, Form form) {
    Optional<Judging.Judged> judged = proposed.judged(sql, point.id().number(), point.tag(), form);
    if (judged.isEmpty()) {
      return Optional.empty();
    }
    LengthSum sum = LengthSum.of(judged.get().view());
    Length system = sum.tunedFor();
    if (sum.balance() == null || system == null) {
      form.complain(
          "Not known: "
              + String.join(", ", sum.missing())
              + ". Choose other parts, or give only the lengths.");
      return Optional.empty();
    }
    return Optional.of(new Asked(system, sum.known(), Proposed.drawing(judged.get())));
  }

  private static Optional<Asked> ofLengths(Form form, Judging.Judged now) {
    Reported total = form.measured("total", Unit.METRE, Unit.FOOT);
    Length recorded = LengthSum.of(now.view()).tunedFor();
    Reported system =
        form.typed("system").isBlank() && recorded != null
            ? null
            : form.measured("system", Unit.METRE, Unit.FOOT);
    if (!form.ok()) {
      return Optional.empty();
    }
    Length fitted = metres(form, "total", total);
    Length tuned = system == null ? recorded : metres(form, "system", system);
    return form.ok() && tuned != null && fitted != null
        ? Optional.of(new Asked(tuned, fitted, ""))
        : Optional.empty();
  }

  private static @Nullable Length metres(Form form, String field, Reported typed) {
    Length length = new Length(typed.unit().toCanonical(typed.amount()));
    if (length.metres().signum() <= 0 || length.metres().doubleValue() > 100) {
      form.complain(field, "A total length lies above 0 and is at most 100 m.");
      return null;
    }
    return length;
  }

  private Answer answer(
      DSLContext sql, Point point, Judging.Judged now, Asked asked, UnitsShown units) {
    double system = asked.system().metres().doubleValue();
    double fitted = asked.fitted().metres().doubleValue();
    String says = says(asked, units);
    Optional<Present> present =
        presents.of(sql, point, Combinations.fingerprint(now.chain()), now.view());
    if (present.isEmpty()) {
      return new Answer(
          says,
          asked.drawing(),
          "",
          null,
          List.of(
              "No good curve of this loop and no line of its family is on record: there is nothing to start from. Take a curve, or enter the family's line."));
    }
    String start = "Starts from " + present.get().words() + ".";
    if (!LengthOutlook.isWithinReach(system, fitted)) {
      return new Answer(
          says,
          asked.drawing(),
          start,
          null,
          List.of(
              "That is more than a quarter of the system length off: beyond the model. Expect nothing of the reading."));
    }
    LengthOutlook outlook =
        new LengthOutlook(
            present.get().baseline(),
            laws.law(sql, now.view().family().map(family -> family.code()).orElse("")),
            system,
            fitted);
    List<String> cautions = new ArrayList<>();
    Optional<CurveResult> judged =
        present.get().record().flatMap(record -> judged(sql, record, outlook));
    judged.ifPresent(
        result ->
            cautions.add(
                "Judged by its profile, such a curve "
                    + (result.verdict().label().equals("conforms")
                        ? "would conform"
                        : "would not conform")
                    + "; its largest deviation would be "
                    + new EffectWords(units.metric()).length(result.maxDsl())
                    + "."));
    cautions.add(
        laws.words(sql, now.view().family().map(family -> family.code()).orElse(""))
            + " Any exchange, even like for like, needs a new curve.");
    cautions.add(EffectWords.OWNER);
    List<MonitorTold> told =
        channels.measuring(sql, point.id(), Viewpoint.of(clock.instant())).stream()
            .map(ChannelsTold::of)
            .toList();
    Optional<GapSpan> straight =
        judged
            .flatMap(CurveResult::linearRange)
            .map(range -> new GapSpan(range.fromMicrometres(), range.toMicrometres()));
    return new Answer(
        says,
        asked.drawing(),
        start,
        new Outlook(present.get(), outlook, Effects.ramp(point.details()), units.metric())
            .shown(Effects.reading(point.details()), told, straight),
        cautions);
  }

  /** The expected curve at the gaps of the kept one, judged by the profile that judged that. */
  private Optional<CurveResult> judged(
      DSLContext sql, Present.Record record, LengthOutlook outlook) {
    List<CurveReading> readings =
        record.curve().of(record.curve().runs().get(0)).stream()
            .map(reading -> expected(reading, outlook.expected().volts(reading.gapMicrometres())))
            .toList();
    return profiles.judged(sql, record.calibrated(), new Curve(readings));
  }

  private static CurveReading expected(CurveReading reading, double volts) {
    String typed = String.format(Locale.ROOT, "%.5f", volts);
    return CurveReading.of(Run.UP, reading.gap(), Reported.read(typed, Unit.VOLT).orElseThrow());
  }

  private static String says(Asked asked, UnitsShown units) {
    Length balance = asked.fitted().minus(asked.system());
    String lengths =
        "%s m fitted on a driver tuned for %s m."
            .formatted(
                Numbers.plain(asked.fitted().metres()), Numbers.plain(asked.system().metres()));
    return balance.isZero()
        ? "In balance: " + lengths
        : "%s too %s: %s"
            .formatted(
                units.both(balance.abs()),
                balance.metres().signum() > 0 ? "long" : "short",
                lengths);
  }

  @Override
  public String template() {
    return "whatif/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    return href(loop);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(new Action("What if …", href(loop)));
  }

  private static String href(Loop loop) {
    return "/what-if/" + PathSegment.of(loop.tag());
  }
}
