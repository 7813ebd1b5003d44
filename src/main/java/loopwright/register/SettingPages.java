package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.matching.PartKind;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** To which system length a driver is set, since when, and by which configuration file. */
final class SettingPages implements Pages {
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

  private final Database database;
  private final Page page;
  private final Register register;
  private final FamilyBook families;
  private final InstantSource clock;

  SettingPages(
      Database database, Page page, Register register, FamilyBook families, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.register = register;
    this.families = families;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/parts/{id}/setting", Permission.RECORD, this::ask);
    routes.post("/parts/{id}/setting", Permission.RECORD, this::set);
  }

  /** One setting as believed now. */
  record Setting(String from, String until, String length, String file) {}

  private void ask(Context http) {
    Component part = driver(http);
    ZoneId zone = zone(part);
    Form form = PartForm.of(part, null);
    String hash = part.facts().settingsHash();
    form.put("file", hash == null ? "" : hash);
    form.put("from", SiteMoment.day(clock.instant(), zone).toString());
    form.put("time", "00:00");
    show(http, 200, part, form);
  }

  private void set(Context http) {
    Component part = driver(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(part.version()))) {
      ChangeNote last = database.read(sql -> register.lastChange(sql, part.id()));
      form.complain(
          Refused.say(DbProblem.STALE)
              + " The last change was by %s: %s".formatted(last.by(), last.reason()));
      show(http, 409, part, form.at(Integer.toString(part.version())));
      return;
    }
    Optional<NominalLength> length = PartForm.length(form);
    Optional<String> file = form.optional("file", SettingPages::hash);
    Instant from = form.read("from", day -> moment(day, form.typed("time"), zone(part)));
    String reason = form.read("reason", PartForm::reason);
    if (form.ok() && done(http, form, part, from, length, file, reason)) {
      page.go(http, "/parts/" + part.id().number(), "The setting is recorded.");
      return;
    }
    show(http, 422, part, form);
  }

  private boolean done(
      Context http,
      Form form,
      Component part,
      Instant from,
      Optional<NominalLength> length,
      Optional<String> file,
      String reason) {
    Act act = People.act(Actor.of(http), "set system length", reason);
    return PartForm.attempt(
            form,
            () ->
                database.write(
                    act,
                    tx -> {
                      register.refuseStale(tx, part.id(), part.version());
                      boolean changed =
                          register.changeFacts(
                              tx,
                              part.id(),
                              from,
                              was ->
                                  was.withLength(length.orElse(null))
                                      .withSettingsHash(file.orElse(null)));
                      if (!changed) {
                        throw new Refused(RegisterProblem.ALREADY_SO, part.label(), "set so");
                      }
                      return act;
                    }))
        .isPresent();
  }

  private static String hash(String typed) {
    String hash = typed.strip().toLowerCase(Locale.ROOT);
    if (!SHA_256.matcher(hash).matches()) {
      throw new IllegalArgumentException(
          "A SHA-256 has 64 digits from 0 to 9 and a to f; this has " + hash.length() + ".");
    }
    return hash;
  }

  private Instant moment(String day, String time, ZoneId zone) {
    LocalTime at = time.isBlank() ? LocalTime.MIDNIGHT : SiteMoment.time(time.strip());
    Instant from =
        at.equals(LocalTime.MIDNIGHT)
            ? SiteMoment.startOf(PartForm.day(day), zone)
            : SiteMoment.of(PartForm.day(day), at, zone);
    if (from.isAfter(clock.instant())) {
      throw new Refused(RegisterProblem.IN_FUTURE, day + " " + time);
    }
    return from;
  }

  private void show(Context http, int status, Component part, Form form) {
    Map<String, Object> model = new HashMap<>();
    ZoneId zone = zone(part);
    model.put("form", form);
    model.put("part", part);
    model.put("zone", zone.getId());
    model.put("unitChoices", PartListPages.unitChoices(UnitsShown.of(http)));
    model.put("evidences", PartWords.orNone("not known", PartWords.evidences()));
    model.put("settings", database.read(sql -> settings(sql, part, zone)));
    model.put("offered", database.read(sql -> offered(sql, part)));
    page.show(http, status, "register/setting", model);
  }

  private List<Setting> settings(DSLContext sql, Component part, ZoneId zone) {
    return register.beliefs(sql, part.id()).stream()
        .map(
            belief -> {
              Span span = belief.span();
              String hash = belief.facts().settingsHash();
              return new Setting(
                  SiteMoment.shown(span.from(), zone),
                  span.isOpen() ? "now" : SiteMoment.shown(span.until(), zone),
                  PartWords.length(belief.facts().length()),
                  hash == null ? "" : hash);
            })
        .toList();
  }

  /** What the driver's family can be set to, in words; empty if it has none or can't be set. */
  private String offered(DSLContext sql, Component part) {
    FamilyId family = part.facts().family();
    return family == null
        ? ""
        : families
            .family(sql, family)
            .map(Family::details)
            .filter(FamilyDetails::selectableSystemLength)
            .map(details -> FamilyPages.lengths(details, PartKind.DRIVER))
            .orElse("");
  }

  private Component driver(Context http) {
    ComponentId id = PartPages.id(http);
    return database
        .read(sql -> register.component(sql, id))
        .filter(part -> part.kind().place() == PartKind.Place.DRIVER_SLOT)
        .orElseThrow(NotFoundResponse::new);
  }

  private ZoneId zone(Component part) {
    return database.read(sql -> register.clock(sql, part.id()));
  }
}
