package loopwright.reach;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.curve.CurveResult;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.exposure.ImpactReviews;
import loopwright.exposure.SecondThought;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.units.Unit;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;

/**
 * How far a standard's error reaches: what it touched, worked out again. Nothing is stored but the
 * impact reviews that an engineer opens for what it turned.
 */
public final class ReachPages implements Pages {
  static final int MOST = 2000;

  private final Database database;
  private final Page page;
  private final Standards standards;
  private final Calibrations calibrations;
  private final Reached reached;
  private final ImpactReviews reviews;
  private final Supplier<ZoneId> zone;
  private final InstantSource clock;

  /**
   * @param zone whose calendar counts
   */
  public ReachPages(
      Database database,
      Page page,
      Standards standards,
      Calibrations calibrations,
      Evidence.Book book,
      ImpactReviews reviews,
      Supplier<ZoneId> zone,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.standards = standards;
    this.calibrations = calibrations;
    this.reached = new Reached(standards, calibrations, book, MOST);
    this.reviews = reviews;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/standards/{code}/reach", Permission.READ, this::show);
    routes.post("/standards/{code}/reach", Permission.DECIDE, this::review);
  }

  /** One that it touched, in words. */
  record Line(
      String href,
      String number,
      String taken,
      String tag,
      String stage,
      String verdict,
      String without,
      boolean flips,
      String why,
      String asf,
      String dsl,
      String paths) {}

  private void show(Context http) {
    Standard standard =
        database
            .read(sql -> standards.find(sql, http.pathParam("code")))
            .orElseThrow(NotFoundResponse::new);
    Form form = Form.fromQuery(http);
    boolean asked = !form.typed("from").isEmpty();
    if (!asked) {
      form.put("from", since(standard)).put("until", today().plusDays(1).toString());
      standard.kind().units().stream().findFirst().ifPresent(u -> form.put("unit", u.symbol()));
    }
    Map<String, Object> model = new HashMap<>();
    Optional<Reached.Asked> read = asked ? ReachForm.asked(standard, form) : Optional.empty();
    model.put("standard", standard);
    model.put("href", "/standards/" + PathSegment.of(standard.code()));
    model.put("form", form);
    model.put("rows", ReachForm.rows(form));
    model.put("rangeUnits", ReachForm.units(standard.kind()));
    model.put("asked", read.isPresent());
    model.put("most", MOST);
    UnitsShown units = UnitsShown.of(http);
    List<Touched> touched =
        read.map(a -> database.read(sql -> reached.touched(sql, standard, a, zone.get())))
            .orElse(List.of());
    model.put("touched", touched.stream().map(t -> line(t, units)).toList());
    model.put("flips", touched.stream().filter(Touched::flips).count());
    model.put("unknown", touched.stream().filter(t -> !t.isComputed()).count());
    model.put("fields", form.everything());
    page.show(http, asked && read.isEmpty() ? 422 : 200, "reach/reach", model);
  }

  /** Since the certificate before the newest: up to then it was found good. */
  private static String since(Standard standard) {
    return standard.newest().map(Certificate::issuedOn).map(LocalDate::toString).orElse("");
  }

  private LocalDate today() {
    return SiteMoment.day(clock.instant(), zone.get());
  }

  /** Opens a review for every record of a loop that the error turned; twice changes nothing. */
  private void review(Context http) {
    Form form = Form.from(http);
    Standard standard =
        database
            .read(sql -> standards.find(sql, http.pathParam("code")))
            .orElseThrow(NotFoundResponse::new);
    Optional<Reached.Asked> asked = ReachForm.asked(standard, form);
    if (asked.isEmpty() || asked.get().error().isEmpty()) {
      throw new Refused(ReachProblem.NO_ERROR);
    }
    Reached.Asked read = asked.get();
    Opened opened =
        database.write(
            People.act(
                Actor.of(http),
                "open impact reviews",
                standard.code() + " was wrong: " + read.error().get().inWords()),
            tx -> open(tx, standard, read));
    page.go(http, "/impact", opened.inWords());
  }

  /** How many reviews are new, stood open or signed before, and how many records have no loop. */
  private record Opened(int fresh, int before, int noLoop) {
    String inWords() {
      return "%s impact reviews opened.".formatted(fresh)
          + (before == 0 ? "" : " %s were opened before.".formatted(before))
          + (noLoop == 0
              ? ""
              : " %s records speak for no loop now: look at them one by one.".formatted(noLoop));
    }
  }

  private Opened open(Tx tx, Standard standard, Reached.Asked asked) {
    String error = asked.error().map(StandardError::inWords).orElse("");
    List<Touched> flips =
        reached.touched(tx.sql(), standard, asked, zone.get()).stream()
            .filter(Touched::flips)
            .toList();
    Set<Long> superseded =
        calibrations.superseded(tx.sql(), flips.stream().map(Touched::record).toList());
    List<SecondThought> thoughts = new ArrayList<>();
    int noLoop = 0;
    for (Touched touched : flips) {
      Calibrated record = touched.record();
      Optional<Long> point = calibrations.loopOf(tx.sql(), record);
      if (superseded.contains(record.id())) {
        continue;
      }
      if (point.isEmpty()) {
        noLoop++;
      } else {
        thoughts.add(
            new SecondThought(record.id(), point.get(), touched.toldOf(standard.code(), error)));
      }
    }
    int fresh = reviews.open(tx, standard.id(), thoughts);
    return new Opened(fresh, thoughts.size() - fresh, noLoop);
  }

  private Line line(Touched touched, UnitsShown units) {
    Calibrated c = touched.record();
    return new Line(
        "/calibrations/" + c.number(),
        c.number(),
        SiteMoment.shown(c.measuredAt(), zone.get()),
        c.place(),
        c.stage().word(),
        c.outcome(),
        touched.isComputed() ? touched.verdictWithout() : "unknown",
        touched.flips(),
        touched.flips() ? String.join(" ", touched.saidAnew()) : touched.whyNot(),
        moved(touched, units, true),
        moved(touched, units, false),
        String.join("; ", touched.paths()));
  }

  private static String moved(Touched touched, UnitsShown units, boolean slope) {
    if (touched.kept().isEmpty() || touched.without().isEmpty()) {
      return "";
    }
    return said(touched.kept().get(), units, slope)
        + " → "
        + said(touched.without().get(), units, slope);
  }

  private static String said(CurveResult result, UnitsShown units, boolean slope) {
    if (slope) {
      return units.metric()
          ? say("%.3f mV/µm", result.asf())
          : say("%.1f mV/mil", Unit.MILLIVOLT_PER_MIL.fromCanonical(result.asf()));
    }
    return units.metric()
        ? say("%.1f µm", result.maxDsl())
        : say("%.2f mil", Unit.MIL.fromCanonical(result.maxDsl()));
  }

  private static String say(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number);
  }
}
