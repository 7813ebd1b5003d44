package loopwright.gapround;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.TappingPoint;
import loopwright.cause.Told;
import loopwright.db.Database;
import loopwright.fieldcheck.GapReading;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.SiteClocks;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/** Gap rounds: bringing one in, what it says, and how a loop's voltage went over the rounds. */
public final class RoundPages implements Pages {
  private static final int MOST_SHOWN = 50;
  private static final int MOST_ROUNDS = 50;
  private static final int MOST_COMPLAINTS = 200;
  private static final int TREND = 200;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final GapRounds rounds;

  public RoundPages(Database database, Page page, Plant plant, GapRounds rounds) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.rounds = rounds;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/gap-rounds", Permission.READ, http -> choose(http, 200, Form.blank(), List.of()));
    routes.post("/gap-rounds", Permission.PLAN, this::bring);
    routes.get("/gap-rounds/{number}", Permission.READ, this::one);
    routes.get("/gap-trend/{tag}", Permission.READ, this::trend);
  }

  record RoundLine(String href, String name, String summary, String who, String at) {}

  record Row(
      String tag,
      String href,
      String trendHref,
      String now,
      String change,
      String pair,
      String words,
      String cause,
      String causeHref) {}

  record TrendRow(String at, String state, String volts, String change, String place, String who) {}

  private void choose(Context http, int status, Form form, List<String> wrong) {
    if (form.typed("measured-at").isEmpty()) {
      form.put("measured-at", TappingPoint.RACK.label());
    }
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("wrong", wrong);
    model.put("places", places());
    model.put("columns", String.join(", ", RoundFile.KNOWN));
    SiteClocks clocks = database.read(sql -> plant.clocks(sql, List.of()));
    model.put(
        "rounds",
        database.read(sql -> rounds.rounds(sql, Long.MAX_VALUE, MOST_ROUNDS)).stream()
            .map(
                round ->
                    new RoundLine(
                        "/gap-rounds/" + round.id(),
                        round.name(),
                        RoundWords.summary(round),
                        round.who(),
                        clocks.shown(round.at(), null)))
            .toList());
    page.show(http, status, "gapround/rounds", model);
  }

  private static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    places.put(TappingPoint.RACK.label(), "the rack's buffered output");
    places.put(TappingPoint.MONITOR.label(), "the monitor's reading");
    places.put(TappingPoint.DRIVER.label(), "the driver's terminals");
    places.put(TappingPoint.BARRIER.label(), "behind the barrier");
    return places;
  }

  private void bring(Context http) {
    Form form = Form.from(http);
    UploadedFile file = http.uploadedFile("file");
    TappingPoint usual =
        form.read(
            "measured-at",
            typed ->
                TappingPoint.named(typed)
                    .orElseThrow(() -> new IllegalArgumentException("Choose where it was taken.")));
    if (file == null || file.filename().isBlank()) {
      form.complain("file", String.valueOf(new Refused(RoundProblem.NO_FILE).getMessage()));
    }
    if (!form.ok() || file == null) {
      choose(http, 422, form, List.of());
      return;
    }
    Actor actor = Actor.of(http);
    String name = lastPart(file.filename());
    Path kept = null;
    try {
      kept = saved(file);
      GapRounds.Brought brought =
          rounds.bring(
              new GapRounds.Given(name, kept, usual, actor.name()),
              People.act(actor, "bring in gap round", name));
      if (brought.complaints().isEmpty()) {
        page.go(http, "/gap-rounds/" + brought.round(), "Brought in.");
      } else {
        form.complain(
            "file",
            "Nothing was stored: "
                + brought.complaints().total()
                + " things are wrong, told below.");
        choose(http, 422, form, wrong(brought));
      }
    } catch (Refused refused) {
      form.complain("file", String.valueOf(refused.getMessage()));
      choose(http, 422, form, List.of());
    } finally {
      drop(kept);
    }
  }

  private static List<String> wrong(GapRounds.Brought brought) {
    return brought.complaints().kept().stream()
        .limit(MOST_COMPLAINTS)
        .map(complaint -> complaint.message())
        .toList();
  }

  /** Some browsers send the whole path. */
  private static String lastPart(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return last.length() > 200 ? last.substring(0, 200) : last;
  }

  /** On disk while it is read: it is gone through twice. */
  private static Path saved(UploadedFile file) {
    try (InputStream in = file.content()) {
      Path saved = Files.createTempFile("gap-round", ".sheet");
      Files.copy(in, saved, StandardCopyOption.REPLACE_EXISTING);
      return saved;
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static void drop(@Nullable Path saved) {
    try {
      if (saved != null) {
        Files.deleteIfExists(saved);
      }
    } catch (IOException stays) {
      throw new UncheckedIOException(stays);
    }
  }

  private void one(Context http) {
    String number = http.pathParam("number");
    if (!number.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          RoundStore.Round round =
              rounds.round(sql, Long.parseLong(number)).orElseThrow(NotFoundResponse::new);
          RoundStandings.Standing standing = rounds.standing(sql, round, MOST_SHOWN);
          model.put("name", round.name());
          model.put("summary", RoundWords.summary(round));
          model.put("unmatched", round.unmatchedTags());
          model.put("loops", standing.loops());
          model.put("worth", standing.worth());
          model.put("alone", standing.alone());
          model.put("rows", rounds.suspects(sql, standing).stream().map(RoundPages::row).toList());
          return round;
        });
    page.show(http, "gapround/round", model);
  }

  private static Row row(Suspicions.Suspect suspect) {
    Compared loop = suspect.ranked().loop();
    String tag = PathSegment.of(loop.tag());
    return new Row(
        loop.tag(),
        "/loops/" + tag,
        "/gap-trend/" + tag,
        Told.volts(loop.now().volts().canonical()),
        loop.change().map(RoundWords::signed).orElse(""),
        suspect.ranked().common().map(RoundWords::signed).orElse(""),
        suspect.words(),
        suspect.likely(),
        "/cause?loop=" + tag);
  }

  private void trend(Context http) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Point point =
              plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
          ZoneId zone = plant.place(sql, point.id()).orElseThrow().site().zone();
          List<GapReading> all =
              rounds.readings().ofPoint(sql, point.id().number(), Viewpoint.LATEST, TREND);
          model.put("tag", point.tag());
          model.put("loopHref", "/loops/" + PathSegment.of(point.tag()));
          model.put("zone", zone.getId());
          model.put("rows", trend(all, zone));
          model.put("drawing", TrendDrawn.of(all));
          return point;
        });
    page.show(http, "gapround/trend", model);
  }

  private static List<TrendRow> trend(List<GapReading> all, ZoneId zone) {
    return all.stream()
        .map(
            reading ->
                new TrendRow(
                    SiteMoment.shown(reading.readAt(), zone),
                    reading.state().label(),
                    reading.volts().toString(),
                    before(all, reading)
                        .map(
                            earlier ->
                                RoundWords.signed(
                                    reading.volts().canonical() - earlier.volts().canonical()))
                        .orElse(""),
                    reading.tappedAt().label(),
                    reading.readBy()))
        .toList();
  }

  private static Optional<GapReading> before(List<GapReading> all, GapReading reading) {
    return all.stream()
        .filter(other -> other.readAt().isBefore(reading.readAt()) && reading.comparesWith(other))
        .max(Comparator.comparing(GapReading::readAt));
  }
}
