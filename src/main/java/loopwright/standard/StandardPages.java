package loopwright.standard;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.loop.Need;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** The register of measuring equipment: list, one with its certificates and uses, entering. */
public final class StandardPages implements Pages, Need.Source {
  private static final int MOST_USES = 100;

  private final Database database;
  private final Page page;
  private final Standards standards;
  private final StandardUses uses;
  private final Supplier<ZoneId> zone;
  private final InstantSource clock;

  /**
   * @param zone whose calendar counts; equipment belongs to no site
   */
  public StandardPages(
      Database database,
      Page page,
      Standards standards,
      StandardUses uses,
      Supplier<ZoneId> zone,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.standards = standards;
    this.uses = uses;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/standards", Permission.READ, this::list);
    routes.get("/standards/new", Permission.RECORD, http -> showNew(http, 200, Form.blank()));
    routes.post("/standards", Permission.RECORD, this::add);
    routes.get("/standards/{code}", Permission.READ, http -> showOne(http, 200, Form.blank()));
    routes.get("/standards/{code}/certificate", Permission.RECORD, this::openCertificate);
    routes.post("/standards/{code}/certificate", Permission.RECORD, this::addCertificate);
    routes.post("/standards/{code}/event", Permission.RECORD, this::addEvent);
  }

  private LocalDate today() {
    return SiteMoment.day(clock.instant(), zone.get());
  }

  /** One in the list. {@code said}: what its due date asks for. */
  record Row(
      String href, String code, String what, String state, String due, String said, String tone) {}

  private void list(Context http) {
    LocalDate today = today();
    List<Row> rows =
        database.read(standards::all).stream().map(standard -> row(standard, today)).toList();
    page.show(http, "standard/list", Map.of("rows", rows));
  }

  static String href(Standard standard) {
    return "/standards/" + PathSegment.of(standard.code());
  }

  private static Row row(Standard standard, LocalDate today) {
    DueState due = DueState.of(standard, today);
    return new Row(
        href(standard),
        standard.code(),
        "%s %s %s, serial %s"
            .formatted(
                standard.kind().word(), standard.maker(), standard.model(), standard.serial()),
        standard.state(),
        standard.newest().map(c -> c.dueOn().toString()).orElse("none"),
        due.said(),
        due.tone());
  }

  private void showNew(Context http, int status, Form form) {
    Map<String, String> kinds = new LinkedHashMap<>();
    kinds.put("", "choose");
    Stream.of(StandardKind.values()).forEach(kind -> kinds.put(kind.word(), kind.word()));
    page.show(http, status, "standard/new", Map.of("form", form, "kinds", kinds));
  }

  private void add(Context http) {
    Form form = Form.from(http);
    String code = form.read("code", typed -> Text.needed("the code", typed, 40));
    StandardKind kind = form.read("kind", StandardKind::named);
    String maker = form.read("maker", typed -> Text.needed("the maker", typed, 80));
    String model = form.read("model", typed -> Text.needed("the model", typed, 80));
    String serial = form.read("serial", typed -> Text.needed("the serial", typed, 60));
    String note = form.read("note", typed -> Text.kept("the note", typed, 2000));
    if (form.ok()) {
      Standard fresh =
          new Standard(0, code, kind, maker, model, serial, note, List.of(), List.of());
      try {
        database.write(
            People.act(Actor.of(http), "add reference standard", fresh.inWords()),
            tx -> standards.add(tx, fresh));
        page.go(http, href(fresh) + "/certificate", code + " is registered. Now its certificate.");
        return;
      } catch (Refused refused) {
        form.complain("code", refused.getMessage());
      }
    }
    showNew(http, 422, form);
  }

  private Standard found(DSLContext sql, Context http) {
    return standards.find(sql, http.pathParam("code")).orElseThrow(NotFoundResponse::new);
  }

  /** A certificate in words. {@code against}: which standard of the shop it rests on, or empty. */
  record CertificateShown(
      String number,
      String issuer,
      String issued,
      String due,
      String factor,
      String note,
      String against,
      List<RangeShown> ranges) {

    static CertificateShown of(Certificate c, String against) {
      return new CertificateShown(
          c.number(),
          c.issuer(),
          c.issuedOn().toString(),
          c.dueOn().toString(),
          Numbers.plain(c.coverageFactor()),
          c.note(),
          against,
          c.ranges().stream().map(RangeShown::of).toList());
    }
  }

  record RangeShown(
      String ends, String correction, String uncertainty, String scale, String resolution) {

    static RangeShown of(CertifiedRange range) {
      return new RangeShown(
          range.ends(),
          range.correction().toString(),
          range.uncertainty().toString(),
          range.scalePercent().map(s -> s.typed() + " %").orElse("none given"),
          range.resolution().map(Object::toString).orElse("in the uncertainty"));
    }
  }

  private void showOne(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    LocalDate today = today();
    database.read(
        sql -> {
          Standard standard = found(sql, http);
          model.put("standard", standard);
          model.put("row", row(standard, today));
          model.put("uses", uses.of(sql, standard.id(), MOST_USES));
          TracesTold told = TracesTold.of(standard, standards.all(sql), standards.traces(sql));
          model.put(
              "certificates",
              standard.certificates().stream()
                  .map(c -> CertificateShown.of(c, told.under(c)))
                  .toList());
          model.put("checkedAgainst", told.checks());
          model.put("downstream", told.downstream());
          model.put("others", others(sql, standard));
          return standard;
        });
    if (form.typed("on").isEmpty() && form.ok()) {
      form.put("on", today.toString());
    }
    model.put("form", form);
    model.put("most", MOST_USES);
    model.put("kinds", eventKinds());
    page.show(http, status, "standard/one", model);
  }

  /** Standards that this one may have been calibrated or checked against. */
  private Map<String, String> others(DSLContext sql, Standard standard) {
    Map<String, String> others = new LinkedHashMap<>();
    others.put("", "none of ours");
    standards.all(sql).stream()
        .filter(each -> each.id() != standard.id())
        .forEach(each -> others.put(each.code(), each.inWords()));
    return others;
  }

  private Optional<Standard> against(DSLContext sql, Form form) {
    String code = form.typed("against").strip();
    return code.isEmpty() ? Optional.empty() : Optional.of(standards.coded(sql, code));
  }

  private static Map<String, String> eventKinds() {
    Map<String, String> kinds = new LinkedHashMap<>();
    kinds.put("", "choose");
    Arrays.stream(StandardEvent.Kind.values()).forEach(k -> kinds.put(k.word(), k.word()));
    return kinds;
  }

  private void openCertificate(Context http) {
    Standard standard = database.read(sql -> found(sql, http));
    Form form = Form.of(Map.of("factor", "2"));
    standard.kind().units().stream().findFirst().ifPresent(unit -> form.put("unit", unit.symbol()));
    showCertificate(http, 200, standard, form);
  }

  private void showCertificate(Context http, int status, Standard standard, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("standard", standard);
    model.put("href", href(standard));
    model.put("others", database.read(sql -> others(sql, standard)));
    model.put("rows", new CertificateForm(form, standard.kind()).rows());
    model.put(
        "rangeUnits",
        standard.kind().units().stream()
            .map(Unit::symbol)
            .collect(Collectors.toMap(u -> u, u -> u, (a, b) -> a, LinkedHashMap::new)));
    page.show(http, status, "standard/certificate", model);
  }

  private void addCertificate(Context http) {
    Standard standard = database.read(sql -> found(sql, http));
    Form form = Form.from(http);
    CertificateForm typed = new CertificateForm(form, standard.kind());
    Optional<Certificate> fresh = typed.read();
    fresh.ifPresent(certificate -> askAboutExpired(form, certificate));
    if (form.ok() && fresh.isPresent() && kept(http, form, typed, fresh.get())) {
      page.go(http, href(standard), "Certificate " + fresh.get().number() + " is on record.");
    } else {
      showCertificate(http, 422, standard, form);
    }
  }

  /** An expired one is history, which may be wanted for old records, or a slip of the year. */
  private void askAboutExpired(Form form, Certificate certificate) {
    if (certificate.overdueOn(today()) && !form.chosen("expired", "yes")) {
      form.complain(
          "expired",
          "It was due on %s and is out of date. Tick here to keep it for calibrations of then."
              .formatted(certificate.dueOn()));
    }
  }

  private boolean kept(Context http, Form form, CertificateForm typed, Certificate fresh) {
    try {
      database.write(
          People.act(Actor.of(http), "add certificate", fresh.inWords()),
          tx -> {
            Standard standard = found(tx.sql(), http);
            Optional<Standard> reference = against(tx.sql(), form);
            return reference.isPresent()
                ? standards.add(tx, standard, fresh, today(), reference.get())
                : standards.add(tx, standard, fresh, today());
          });
      return true;
    } catch (Refused refused) {
      typed.complain(refused);
      return false;
    }
  }

  private void addEvent(Context http) {
    Form form = Form.from(http);
    StandardEvent.Kind kind = form.read("kind", StandardEvent.Kind::named);
    LocalDate on = form.read("on", SiteMoment::day);
    String note = form.read("note", typed -> Text.needed("what was found", typed, 2000));
    if (form.ok()) {
      try {
        String href =
            database.write(
                People.act(Actor.of(http), "reference standard: " + kind.word(), note),
                tx -> {
                  Standard standard = found(tx.sql(), http);
                  StandardEvent event = new StandardEvent(kind, on, note, "");
                  Optional<Standard> reference = against(tx.sql(), form);
                  if (reference.isPresent()) {
                    standards.add(tx, standard, event, today(), reference.get());
                  } else {
                    standards.add(tx, standard, event, today());
                  }
                  return href(standard);
                });
        page.go(http, href, "Entered: " + kind.word() + ".");
        return;
      } catch (Refused refused) {
        form.complain("on", refused.getMessage());
      }
    }
    showOne(http, 422, form);
  }

  /** Those in use whose certificate is overdue or soon will be, and those that failed a check. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    LocalDate today = SiteMoment.day(now, zone.get());
    List<Need> needs = new ArrayList<>();
    for (Standard standard : standards.all(sql)) {
      DueState due = DueState.of(standard, today);
      if (due.needsSomebody()) {
        needs.add(
            new Need(
                "attention",
                due.urgency(),
                href(standard),
                standard.code(),
                standard.kind().word(),
                null,
                due.said(),
                null,
                "shop",
                due.nextStep()));
      }
    }
    return needs;
  }
}
