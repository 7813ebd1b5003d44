package loopwright.field;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.attachment.Attachments;
import loopwright.calibration.Calibrated;
import loopwright.db.Database;
import loopwright.loop.Need;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutagePart;
import loopwright.pack.FieldReturns;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Accounts;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * A pack's devices, for people who are signed in: taking it along, ending devices, and deciding
 * about entries that wait. The rest of the feature hangs here too: {@link FieldApi}, {@link
 * FieldShell}.
 */
public final class FieldPages implements Pages, OutagePart, Need.Source {
  private static final int URGENCY = 4;

  private final Database database;
  private final Page page;
  private final FieldReturns packs;
  private final FieldStore store = new FieldStore();
  private final TakeAlong devices;
  private final FieldEntries entries;
  private final InstantSource clock;

  public FieldPages(
      Database database, Page page, FieldReturns packs, Accounts accounts, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.packs = packs;
    this.devices = new TakeAlong(store, packs, accounts, clock);
    this.entries = new FieldEntries(store, packs, new Attachments());
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(
        "/outages/{number}/take-along", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/api/outages/{number}/devices", Permission.RECORD, this::take);
    routes.post("/outages/{number}/take-along/{device}/end", Permission.RECORD, this::end);
    routes.post("/outages/{number}/take-along/entries/{entry}", Permission.RECORD, this::decide);
    new FieldApi(database, devices, entries, store, packs, clock).mount(routes);
    new FieldShell(page).mount(routes);
  }

  record DeviceLine(
      String href,
      String label,
      String person,
      String taken,
      String seen,
      String until,
      String standing,
      boolean may) {}

  record CellLine(String line, String of, String found, String left) {}

  record OnRecord(String number, String href, String words) {}

  record EntryLine(
      long id,
      String number,
      String href,
      String tag,
      String tagHref,
      String from,
      String at,
      String typedAt,
      String state,
      List<String> told,
      @Nullable String decision,
      boolean waits,
      List<CellLine> cells,
      List<OnRecord> meanwhile) {}

  private Outage outage(DSLContext sql, Context http) {
    return OutagePages.named(sql, packs.outages(), http);
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = outage(sql, http);
          model.put("outage", outage);
          model.put("issued", packs.newest(sql, outage).isPresent());
          model.put(
              "devices",
              devices.of(sql, outage).stream().map(device -> line(outage, device)).toList());
          model.put(
              "entries",
              store.entries(sql, outage.id()).stream()
                  .map(entry -> line(sql, outage, entry))
                  .toList());
          return outage;
        });
    model.put("form", form);
    model.put("days", TakeAlong.USUAL_DAYS);
    model.put("longest", TakeAlong.LONGEST_DAYS);
    page.show(http, status, "field/take-along", model);
  }

  private DeviceLine line(Outage outage, Device device) {
    ZoneId zone = outage.zone();
    boolean expired = device.isExpired(clock.instant());
    Instant seen = device.seenAt();
    String standing =
        device.endedBy() != null
            ? "ended by " + device.endedBy() + ": " + device.endReason()
            : expired ? "its time is over" : "may send";
    return new DeviceLine(
        outage.href() + "/take-along/" + device.id() + "/end",
        device.label(),
        device.personName(),
        SiteMoment.shown(device.takenAt(), zone),
        seen == null ? "not yet" : SiteMoment.shown(seen, zone),
        SiteMoment.shown(device.expiresAt(), zone),
        standing,
        device.endedBy() == null && !expired);
  }

  private EntryLine line(DSLContext sql, Outage outage, Entry entry) {
    Entry.Decision decision = entry.decision();
    return new EntryLine(
        entry.id(),
        entry.number(),
        outage.href() + "/take-along/entries/" + entry.id(),
        entry.tag(),
        loopHref(entry.tag()),
        entry.from() + ", " + entry.by(),
        SiteMoment.shown(entry.at(), outage.zone()),
        entry.content().typed().map(m -> SiteMoment.shown(m, outage.zone())).orElse("?"),
        entry.state(),
        entry.told().lines().toList(),
        decision == null ? null : inWords(decision),
        entry.waits(),
        SentCells.of(entry.content()),
        entry.waits() ? meanwhile(sql, outage, entry) : List.of());
  }

  private static String loopHref(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  private static String inWords(Entry.Decision decision) {
    return "%s by %s: %s %s"
        .formatted(
            decision.recorded() ? "Recorded" : "Set aside",
            decision.who(),
            decision.reason(),
            decision.told())
        .strip();
  }

  private List<OnRecord> meanwhile(DSLContext sql, Outage outage, Entry entry) {
    return packs.since(sql, entry.point(), entry.content().since()).stream()
        .map(kept -> onRecord(outage, kept))
        .toList();
  }

  private static OnRecord onRecord(Outage outage, Calibrated kept) {
    return new OnRecord(
        kept.number(),
        "/calibrations/" + kept.number(),
        "%s of %s by %s, entered by %s: %s"
            .formatted(
                kept.stage().word(),
                SiteMoment.shown(kept.measuredAt(), outage.zone()),
                kept.performedBy(),
                kept.enteredBy(),
                kept.outcome()));
  }

  /** Answers a script of ours: the token is in no page and no address, and nowhere else after. */
  private void take(Context http) {
    Form form = Form.from(http);
    String label = form.read("label", text -> Text.needed("a name for the device", text, 60));
    Integer days = form.read("days", FieldPages::days);
    if (!form.ok()) {
      http.status(422)
          .json(Map.of("code", "U-100", "message", String.join(" ", form.complaints().values())));
      return;
    }
    Actor actor = Actor.of(http);
    Outage outage = database.read(sql -> outage(sql, http));
    TakeAlong.Taken taken =
        database.write(
            People.act(actor, "take pack along", "on the device '" + label + "'"),
            tx -> {
              devices.replace(tx, outage.id(), Long.parseLong(actor.id()), form.typed("replaces"));
              return devices.take(tx, outage.id(), actor, label, days);
            });
    http.json(Map.of("token", taken.token().text(), "pack", outage.number()));
  }

  private static Integer days(String text) {
    if (!text.matches("\\d{1,2}")
        || Integer.parseInt(text) < 1
        || Integer.parseInt(text) > TakeAlong.LONGEST_DAYS) {
      throw new IllegalArgumentException(
          "Give the days as a whole number from 1 to " + TakeAlong.LONGEST_DAYS + ".");
    }
    return Integer.valueOf(text);
  }

  private static long number(Context http, String name) {
    String typed = http.pathParam(name);
    if (!typed.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(typed);
  }

  private boolean isNoReason(Context http, Form form, String reason, int most) {
    if (!reason.isEmpty() && reason.length() <= most) {
      return false;
    }
    form.complain("Say why, in up to " + most + " characters. Nothing was changed.");
    show(http, 422, form);
    return true;
  }

  private void end(Context http) {
    Form form = Form.from(http);
    String reason = form.typed("reason").strip();
    if (isNoReason(http, form, reason, 400)) {
      return;
    }
    Actor actor = Actor.of(http);
    Outage outage = database.read(sql -> outage(sql, http));
    change(
        http,
        form,
        outage,
        "The device may send nothing any more. What it still holds stays on it.",
        () ->
            database.write(
                People.act(actor, "end device", reason),
                tx -> {
                  devices.end(
                      tx, outage.id(), number(http, "device"), Long.parseLong(actor.id()), reason);
                  return true;
                }));
  }

  private void decide(Context http) {
    Form form = Form.from(http);
    String reason = form.typed("reason").strip();
    if (isNoReason(http, form, reason, 2000)) {
      return;
    }
    Actor actor = Actor.of(http);
    long person = Long.parseLong(actor.id());
    long id = number(http, "entry");
    Outage outage = database.read(sql -> outage(sql, http));
    boolean record = form.typed("do").equals("record");
    change(
        http,
        form,
        outage,
        record ? "Recorded." : "Set aside; it stays readable here.",
        () ->
            database.write(
                People.act(actor, record ? "record field entry" : "set field entry aside", reason),
                tx -> {
                  if (record) {
                    entries.record(tx, outage.id(), id, person, reason);
                  } else {
                    entries.setAside(tx, outage.id(), id, person, reason);
                  }
                  return true;
                }));
  }

  private void change(Context http, Form form, Outage outage, String message, Runnable work) {
    try {
      work.run();
      page.go(http, outage.href() + "/take-along", message);
    } catch (Refused refused) {
      form.complain(FieldReturns.said(refused));
      show(http, 422, form);
    }
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    List<Entry> all = store.entries(sql, outage.id());
    long waiting = all.stream().filter(Entry::waits).count();
    String sentence =
        all.isEmpty()
            ? "Take the pack along to where there is no network."
            : "%s of %s entries from devices wait for a decision.".formatted(waiting, all.size());
    return new Link("On phones and tablets", outage.href() + "/take-along", sentence);
  }

  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return store.waiting(sql).stream()
        .map(
            one ->
                new Need(
                    "attention",
                    URGENCY,
                    "/outages/O-" + one.outage() + "/take-along",
                    "O-" + one.outage(),
                    one.name(),
                    null,
                    one.entries() == 1
                        ? "An entry from a device can't be recorded as it stands."
                        : one.entries() + " entries from devices can't be recorded as they stand.",
                    one.since(),
                    "technician",
                    "Look at both sides, then record or set aside."))
        .toList();
  }
}
