package loopwright.signing;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RecordPanel;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.loop.Need;
import loopwright.people.PasswordAgain;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.register.ToleranceProfiles;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Signing and reviewing a calibration, what its page shows of it, and reviews that wait. */
public final class SigningPages implements Pages, RecordPanel, Need.Source {
  private static final int MOST_WAITING = 100;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Calibrations calibrations;
  private final ToleranceProfiles profiles;
  private final Signing signing;
  private final PasswordAgain password;
  private final InstantSource clock;

  public SigningPages(
      Database database,
      Page page,
      Plant plant,
      Calibrations calibrations,
      ToleranceProfiles profiles,
      Signing signing,
      PasswordAgain password,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.calibrations = calibrations;
    this.profiles = profiles;
    this.signing = signing;
    this.password = password;
    this.clock = clock;
  }

  @Override
  public Map<Long, String> marks(DSLContext sql, List<Calibrated> records) {
    return signing.marks(sql, records);
  }

  @Override
  public void mount(Routes routes) {
    routes.get(
        "/calibrations/{number}/sign",
        Permission.RECORD,
        http -> show(http, 200, false, Form.blank()));
    routes.get(
        "/calibrations/{number}/review",
        Permission.RECORD,
        http -> show(http, 200, true, Form.blank()));
    routes.post("/calibrations/{number}/sign", Permission.RECORD, http -> sign(http, false));
    routes.post("/calibrations/{number}/review", Permission.RECORD, http -> sign(http, true));
  }

  private Calibrated found(DSLContext sql, Context http) {
    try {
      return calibrations.numbered(sql, http.pathParam("number"));
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  private ZoneId zone(DSLContext sql, Calibrated c) {
    return place(sql, c)
        .map(place -> place.site().zone())
        .orElseGet(() -> plant.clocks(sql, List.of()).of(null));
  }

  private Optional<PointPlace> place(DSLContext sql, Calibrated c) {
    return Optional.ofNullable(c.point()).flatMap(point -> plant.place(sql, new PointId(point)));
  }

  private Signing.Days days(ZoneId zone, Calibrated c) {
    return new Signing.Days(
        SiteMoment.day(c.measuredAt(), zone), SiteMoment.day(clock.instant(), zone));
  }

  private void show(Context http, int status, boolean review, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Calibrated c = found(sql, http);
          ZoneId zone = zone(sql, c);
          Actor actor = Actor.of(http);
          List<Refused> against =
              review
                  ? signing.againstReview(sql, c, actor, days(zone, c))
                  : signing.againstSigning(sql, c, actor, days(zone, c));
          model.put("record", c);
          model.put("taken", SiteMoment.shown(c.measuredAt(), zone) + " " + zone.getId());
          model.put("against", against.stream().map(Signing::said).toList());
          model.put("hash", calibrations.contentHash(sql, c));
          return c;
        });
    model.put("form", form);
    model.put("review", review);
    page.show(http, status, "signing/sign", model);
  }

  private void sign(Context http, boolean review) {
    Form form = Form.from(http);
    Actor actor = Actor.of(http);
    if (!password.isGiven(http, form)) {
      Form blank = Form.blank();
      form.complaints().forEach(blank::complain);
      show(http, 422, review, blank);
      return;
    }
    try {
      Calibrated signed =
          database.write(
              People.act(actor, review ? "review calibration" : "sign calibration", "signature"),
              tx -> sign(tx, http, actor, review));
      page.go(
          http,
          "/calibrations/" + signed.number(),
          review ? "Reviewed." : "Signed. It can be superseded, but not changed.");
    } catch (Refused refused) {
      Form blank = Form.blank();
      blank.complain(refused);
      show(http, 422, review, blank);
    }
  }

  private Calibrated sign(Tx tx, Context http, Actor actor, boolean review) {
    Calibrated c = found(tx.sql(), http);
    Signing.Days days = days(zone(tx.sql(), c), c);
    if (review) {
      signing.review(tx, c, actor, days);
    } else {
      signing.sign(tx, c, actor, days);
    }
    return c;
  }

  /** A signature in words. */
  record Line(String role, String name, String at, String basis, String concessions) {}

  /** What a record's page shows; addresses are null where there is nothing to do. */
  record Panel(
      String state,
      List<Line> lines,
      String hash,
      boolean intact,
      @Nullable String signHref,
      @Nullable String reviewHref) {}

  @Override
  public String template() {
    return "signing/panel";
  }

  @Override
  public Optional<Object> model(DSLContext sql, Calibrated c, Reader reader) {
    ZoneId zone = zone(sql, c);
    List<Signature> signatures = signing.signatures(sql, c);
    String hash = calibrations.contentHash(sql, c);
    boolean signed = !signatures.isEmpty();
    boolean reviewed = signatures.size() > 1;
    boolean own = signatures.stream().anyMatch(s -> isOf(s, reader.actor()));
    boolean open = c.origin().equals("entered") && calibrations.superseded(sql, c).isEmpty();
    boolean mayAct = open && reader.actor().may(Permission.RECORD);
    return Optional.of(
        new Panel(
            state(sql, c, signed, reviewed),
            signatures.stream().map(s -> line(s, zone)).toList(),
            hash,
            signatures.stream().allMatch(s -> s.hash().equals(hash)),
            mayAct && !signed ? "/calibrations/" + c.number() + "/sign" : null,
            mayAct && signed && !reviewed && !own
                ? "/calibrations/" + c.number() + "/review"
                : null));
  }

  /** What somebody stands for with a signature, only they or an engineer replace. */
  @Override
  public void refuseSuperseding(DSLContext sql, Calibrated c, Actor actor) {
    List<Signature> signatures = signing.signatures(sql, c);
    if (!signatures.isEmpty()
        && !actor.may(Permission.DECIDE)
        && signatures.stream().noneMatch(s -> isOf(s, actor))) {
      throw new Refused(SigningProblem.NOT_YOURS, c.number(), signatures.get(0).name());
    }
  }

  private static boolean isOf(Signature signature, Actor person) {
    return Long.toString(signature.person()).equals(person.id());
  }

  private String state(DSLContext sql, Calibrated c, boolean signed, boolean reviewed) {
    if (!signed) {
      return c.origin().equals("entered") ? "not signed" : c.origin() + ", unsigned";
    }
    if (reviewed) {
      return "signed and reviewed";
    }
    return reviewAsked(sql, c) ? "signed, waits for review" : "signed";
  }

  private boolean reviewAsked(DSLContext sql, Calibrated c) {
    return Optional.ofNullable(c.profileVersion())
        .flatMap(version -> profiles.version(sql, version))
        .filter(stored -> stored.terms().reviewAsked())
        .isPresent();
  }

  private static Line line(Signature s, ZoneId zone) {
    return new Line(
        s.role(),
        s.name(),
        SiteMoment.shown(s.at(), zone) + " " + zone.getId(),
        "A-" + s.authorisation() + ": " + s.basis(),
        s.concessions());
  }

  /** Signed records that wait for a second person because their profile asks for one. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return signing.notReviewed(sql, MOST_WAITING).stream()
        .map(number -> calibrations.numbered(sql, number))
        .filter(c -> reviewAsked(sql, c) && calibrations.superseded(sql, c).isEmpty())
        .map(c -> need(sql, c))
        .toList();
  }

  private Need need(DSLContext sql, Calibrated c) {
    Optional<PointPlace> place = place(sql, c);
    return new Need(
        "attention",
        5,
        "/calibrations/" + c.number() + "/review",
        c.number(),
        Objects.requireNonNullElse(c.tag(), "bench")
            + place.map(p -> ", " + p.train().code() + ", " + p.site().name()).orElse(""),
        place.map(p -> p.train().id().number()).orElse(null),
        "Signed by %s; its profile asks for a review.".formatted(c.performedBy()),
        c.measuredAt(),
        "engineer",
        "Another person looks it over and reviews it.");
  }
}
