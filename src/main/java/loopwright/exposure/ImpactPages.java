package loopwright.exposure;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RecordPanel;
import loopwright.db.Database;
import loopwright.loop.Need;
import loopwright.people.PasswordAgain;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.problem.Text;
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

/** Impact reviews to read and to sign, and what the first page and records show of them. */
public final class ImpactPages implements Pages, RecordPanel, Need.Source {
  private static final int PAGE = 50;
  private static final int MOST_NEEDS = 500;
  private static final int LONGEST = 2000;
  private static final String OF_A_STANDARD =
      "%s was found wrong. From this record of %s until one made with sound equipment, set points may"
          + " have acted elsewhere than it says. Levels below are worked out from the curve as it was"
          + " read, the error still in it.";

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Calibrations calibrations;
  private final Effects effects;
  private final ImpactReviews reviews;
  private final PasswordAgain password;

  public ImpactPages(
      Database database,
      Page page,
      Plant plant,
      Calibrations calibrations,
      Effects effects,
      ImpactReviews reviews,
      PasswordAgain password) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.calibrations = calibrations;
    this.effects = effects;
    this.reviews = reviews;
    this.password = password;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/impact", Permission.READ, this::list);
    routes.get("/impact/{number}", Permission.READ, http -> showOne(http, 200, Form.blank()));
    routes.post("/impact/{number}", Permission.DECIDE, this::sign);
  }

  record Row(
      String href,
      String number,
      String tag,
      String tagHref,
      String record,
      String found,
      String state) {}

  record Signed(String who, String at, String outcome, String words, List<String> told) {}

  record Shown(
      Row row,
      String recordHref,
      String since,
      List<String> told,
      Effects.@Nullable Shown effect,
      @Nullable Signed signed) {}

  private void list(Context http) {
    boolean onlyOpen = !"all".equals(http.queryParam("show"));
    String before = Optional.ofNullable(http.queryParam("before")).orElse("");
    long last = before.matches("\\d{1,18}") ? Long.parseLong(before) : Long.MAX_VALUE;
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          List<ImpactReview> found = reviews.before(sql, last, onlyOpen, PAGE + 1);
          List<ImpactReview> some = found.subList(0, Math.min(PAGE, found.size()));
          model.put("rows", some.stream().map(review -> row(sql, review)).toList());
          String all = onlyOpen ? "" : "show=all&";
          model.put(
              "older",
              found.size() > PAGE ? "/impact?" + all + "before=" + some.get(PAGE - 1).id() : null);
          return found;
        });
    model.put("onlyOpen", onlyOpen);
    page.show(http, "exposure/impacts", model);
  }

  private Row row(DSLContext sql, ImpactReview review) {
    return new Row(
        href(review),
        review.number(),
        review.tag(),
        "/loops/" + PathSegment.of(review.tag()),
        review.calibration(),
        SiteMoment.shown(review.foundAt(), zone(sql, review.point())),
        review.signOff().map(signed -> signed.outcome().word()).orElse("open"));
  }

  private static String href(ImpactReview review) {
    return "/impact/" + review.number();
  }

  private PointPlace place(DSLContext sql, long point) {
    return plant.place(sql, new PointId(point)).orElseThrow(NotFoundResponse::new);
  }

  private ZoneId zone(DSLContext sql, long point) {
    return place(sql, point).site().zone();
  }

  private static long number(Context http) {
    String number = http.pathParam("number");
    if (!number.matches("I-\\d{1,15}")) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(number.substring(2));
  }

  private ImpactReview review(DSLContext sql, Context http) {
    try {
      return reviews.one(sql, number(http));
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  private void showOne(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    UnitsShown units = UnitsShown.of(http);
    model.put("review", database.read(sql -> shown(sql, review(sql, http), units)));
    model.put("form", form);
    model.put("outcomes", outcomes());
    page.show(http, status, "exposure/impact", model);
  }

  private static Map<String, String> outcomes() {
    Map<String, String> outcomes = new LinkedHashMap<>();
    outcomes.put("", "choose");
    Arrays.stream(ImpactOutcome.values()).forEach(each -> outcomes.put(each.name(), each.word()));
    return outcomes;
  }

  private Shown shown(DSLContext sql, ImpactReview review, UnitsShown units) {
    Calibrated record = calibrations.numbered(sql, review.calibration());
    ZoneId zone = zone(sql, review.point());
    return new Shown(
        row(sql, review),
        "/calibrations/" + review.calibration(),
        review.standard() == null
            ? new Meanwhile(effects).since(sql, record, zone)
            : OF_A_STANDARD.formatted(review.standard(), SiteMoment.day(record.measuredAt(), zone)),
        review.told(),
        effects.ofRecord(sql, record, units).orElse(null),
        review
            .signOff()
            .map(
                signed ->
                    new Signed(
                        signed.who(),
                        SiteMoment.shown(signed.at(), zone),
                        signed.outcome().word(),
                        signed.words(),
                        signed.told()))
            .orElse(null));
  }

  private void sign(Context http) {
    Form form = Form.from(http);
    ImpactOutcome outcome = form.oneOf("outcome", ImpactOutcome.class);
    String words = form.read("words", text -> Text.needed("what was looked at", text, LONGEST));
    if (!form.ok() || !password.isGiven(http, form)) {
      showOne(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    UnitsShown units = UnitsShown.of(http);
    try {
      database.write(
          People.act(actor, "sign impact review", words),
          tx -> {
            ImpactReview review = review(tx.sql(), http);
            Shown seen = shown(tx.sql(), review, units);
            List<String> told = new ArrayList<>(seen.told());
            told.addAll(Meanwhile.told(seen.since(), seen.effect()));
            reviews.sign(tx, review.id(), Long.parseLong(actor.id()), outcome, words, told);
            return review;
          });
      page.go(http, "/impact/I-" + number(http), "Signed off.");
    } catch (Refused refused) {
      form.complain(refused);
      showOne(http, 422, form);
    }
  }

  @Override
  public String template() {
    return "exposure/of-record";
  }

  @Override
  public Optional<Object> model(DSLContext sql, Calibrated record, Reader reader) {
    return reviews.ofCalibration(sql, record.id()).map(review -> row(sql, review));
  }

  /** One each; those that files brought in, and those of one standard, come as one a train. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    Map<String, List<ImpactReview>> many = new LinkedHashMap<>();
    List<Need> needs = new ArrayList<>();
    for (ImpactReview review : reviews.before(sql, Long.MAX_VALUE, true, MOST_NEEDS)) {
      PointPlace place = place(sql, review.point());
      if (review.imported() || review.standard() != null) {
        many.computeIfAbsent(
                place.train().id().number() + " " + review.standard(), key -> new ArrayList<>())
            .add(review);
      } else {
        needs.add(need(review, place));
      }
    }
    many.values().forEach(some -> needs.add(group(sql, some)));
    return needs;
  }

  private static Need need(ImpactReview review, PointPlace place) {
    return new Need(
        "attention",
        3,
        href(review),
        review.number(),
        review.tag() + ", " + place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        why(review, "%s was found out of tolerance (%s): what did it do to protection?"),
        review.openedAt(),
        "engineer",
        "Look at where set points acted, then sign the review off.");
  }

  private static String why(ImpactReview review, String outOfTolerance) {
    return review.standard() == null
        ? outOfTolerance.formatted(review.tag(), review.calibration())
        : "%s was found wrong: without its error the verdict of %s (%s) is another one. What did it do to protection?"
            .formatted(review.standard(), review.tag(), review.calibration());
  }

  private Need group(DSLContext sql, List<ImpactReview> some) {
    ImpactReview oldest = some.get(some.size() - 1);
    PointPlace place = place(sql, oldest.point());
    if (some.size() == 1) {
      return need(oldest, place);
    }
    return new Need(
        "attention",
        3,
        "/impact",
        some.size() + " impact reviews",
        place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        why(
            oldest,
            "Records brought in were out of tolerance, for instance %s (%s): what did they do to protection?"),
        oldest.openedAt(),
        "engineer",
        "Look at where set points acted, then sign each review off.");
  }
}
