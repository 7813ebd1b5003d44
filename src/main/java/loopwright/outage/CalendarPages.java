package loopwright.outage;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import loopwright.db.Database;
import loopwright.loop.DueLoops;
import loopwright.people.People;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.AskedAddress;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Due dates and outages as a calendar file, for somebody signed in or under a secret address that a
 * calendar program can read by itself. The address opens this file and nothing else, ends when it
 * is revoked, and with the account.
 */
public final class CalendarPages implements Pages {
  private static final int SECRET_BYTES = 32;
  private static final int DAYS_AHEAD = 3_660;
  private static final int MOST = 100_000;
  private static final SecureRandom RANDOM = new SecureRandom();

  private final Database database;
  private final Page page;
  private final Outages outages;
  private final People people;
  private final List<CalendarDays> others;
  private final InstantSource clock;
  private final Supplier<UUID> register;
  private final CalendarStore store = new CalendarStore();
  private final DueLoops due = new DueLoops();

  /**
   * @param others days of other features
   * @param register identity of this database, so that entries of two registers stay apart
   */
  public CalendarPages(
      Database database,
      Page page,
      Outages outages,
      People people,
      List<CalendarDays> others,
      InstantSource clock,
      Supplier<UUID> register) {
    this.database = database;
    this.page = page;
    this.outages = outages;
    this.people = people;
    this.others = List.copyOf(others);
    this.clock = clock;
    this.register = register;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages.ics", Permission.READ, this::file);
    routes.get("/calendar", Permission.READ, http -> show(http, null));
    routes.post("/calendar", Permission.READ, this::make);
    routes.post("/calendar/revoke", Permission.READ, this::revoke);
    routes.get("/calendar/{secret}/outages.ics", Permission.ANYONE, this::subscribed);
  }

  private static long person(Context http) {
    return Long.parseLong(Actor.of(http).id());
  }

  /**
   * @param address just made, shown this once; null otherwise
   */
  private void show(Context http, @Nullable String address) {
    Optional<Instant> made = database.read(sql -> store.madeAt(sql, person(http)));
    Map<String, Object> model = new HashMap<>();
    model.put("made", made.map(at -> SiteMoment.shown(at, ZoneOffset.UTC) + " UTC").orElse(null));
    model.put("address", address);
    page.show(http, 200, "outage/calendar", model);
  }

  private void make(Context http) {
    byte[] bytes = new byte[SECRET_BYTES];
    RANDOM.nextBytes(bytes);
    String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    long person = person(http);
    database.write(
        People.act(Actor.of(http), "make calendar address", "asked for on its page"),
        tx -> {
          store.put(tx, person, hash(secret));
          return person;
        });
    http.header("Cache-Control", "no-store");
    show(http, AskedAddress.of(http) + "/calendar/" + secret + "/outages.ics");
  }

  private void revoke(Context http) {
    long person = person(http);
    boolean was =
        database.write(
            People.act(Actor.of(http), "revoke calendar address", "asked for on its page"),
            tx -> store.remove(tx, person));
    page.go(http, "/calendar", was ? "Revoked. Nobody reads the calendar under it any more." : "");
  }

  private static String hash(String secret) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  private void subscribed(Context http) {
    String hash = hash(http.pathParam("secret"));
    boolean opens =
        database
            .read(sql -> store.person(sql, hash))
            .flatMap(person -> people.find(Long.toString(person)))
            .filter(actor -> actor.may(Permission.READ))
            .isPresent();
    if (!opens) {
      throw new NotFoundResponse();
    }
    file(http);
  }

  private void file(Context http) {
    CalendarFile file = new CalendarFile(clock.instant());
    database.snapshot(
        sql -> {
          outages(sql, file);
          dueDays(sql, file);
          others.forEach(days -> days.days(sql).forEach(day -> event(file, day)));
          return file;
        });
    http.contentType("text/calendar; charset=utf-8");
    http.header("Content-Disposition", "attachment; filename=\"outages.ics\"");
    http.header("Cache-Control", "no-store");
    http.result(file.bytes());
  }

  private void event(CalendarFile file, CalendarDays.Day day) {
    file.event(day.key() + "@" + register.get(), day.on(), day.on(), day.title(), day.about());
  }

  private void outages(DSLContext sql, CalendarFile file) {
    for (Outage outage : outages.newest(sql)) {
      file.event(
          outage.number() + "@" + register.get(),
          outage.begins(),
          outage.ends(),
          "Outage " + outage.number() + " " + outage.name(),
          "%s: %s. %s. %s"
              .formatted(
                  outage.siteName(),
                  outage.trainCodes(),
                  Text.capital(outage.state().word()),
                  outage.team()));
    }
  }

  private record Day(String train, LocalDate due) {}

  /** One event a train and day. */
  private void dueDays(DSLContext sql, CalendarFile file) {
    Map<Day, List<String>> days = new LinkedHashMap<>();
    due.until(sql, clock.instant(), DAYS_AHEAD, null, MOST)
        .forEach(
            loop ->
                days.computeIfAbsent(
                        new Day(loop.trainCode(), loop.dueOn()), any -> new ArrayList<>())
                    .add(loop.tag()));
    days.forEach(
        (day, tags) ->
            file.event(
                "due-" + day.train().replace(' ', '-') + "-" + day.due() + "@" + register.get(),
                day.due(),
                day.due(),
                "Due on %s: %s %s"
                    .formatted(day.train(), tags.size(), tags.size() == 1 ? "loop" : "loops"),
                String.join(", ", tags)));
  }
}
