package loopwright.loop;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.journal.Looking;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointDetails;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.units.Numbers;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * The page of one loop: drawn to length, judged, with what is fitted, its curves and its history.
 */
public final class LoopPages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Channels channels;
  private final Judging judging;
  private static final int MOST_TOLD = 200;

  private final List<LoopPanel> panels;
  private final List<LoopStory> stories;
  private final InstantSource clock;
  private final EventStore events = new EventStore();

  public LoopPages(
      Database database,
      Page page,
      Plant plant,
      Channels channels,
      Judging judging,
      List<LoopPanel> panels,
      List<LoopStory> stories,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.channels = channels;
    this.judging = judging;
    this.panels = List.copyOf(panels);
    this.stories = List.copyOf(stories);
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}", Permission.READ, this::show);
  }

  record PartLine(
      String slot,
      @Nullable Long id,
      String label,
      String about,
      String length,
      String since,
      String source) {}

  /** {@code href} is null where the line says all of it. */
  record EventLine(
      Instant at,
      String when,
      String kind,
      @Nullable String href,
      @Nullable String verdict,
      String note,
      String entered,
      List<LoopEvent.Told> findings) {}

  record PanelShown(String template, Object model) {}

  record LoopPage(
      String tag,
      long pointId,
      String href,
      String site,
      long trainId,
      String train,
      String machine,
      String about,
      String verdict,
      String headline,
      String asOf,
      String drawing,
      List<Shown.Row> findings,
      List<PartLine> parts,
      List<ChannelLines.Shown> channels,
      List<LoopPanel.Action> actions,
      List<PanelShown> panels,
      List<EventLine> events) {}

  private void show(Context http) {
    Map<String, Object> model = new HashMap<>();
    Looking look = database.read(sql -> fill(sql, http, model));
    page.show(http, look.status(), "loop/loop", model);
  }

  private Looking fill(DSLContext sql, Context http, Map<String, Object> model) {
    Point point = plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
    PointPlace place = plant.place(sql, point.id()).orElseThrow(NotFoundResponse::new);
    Looking look = Looking.of(http, sql, place.site().zone(), clock.instant());
    model.put("look", look);
    model.put("loop", loopPage(sql, point, place, look, UnitsShown.of(http)));
    return look;
  }

  private Judging.Judged judged(DSLContext sql, Point point, Looking look) {
    Judging.Subject subject = new Judging.Subject(point.id().number(), point.tag());
    return look.past()
        ? judging.judge(sql, List.of(subject), look.viewpoint()).get(0)
        : judging.judge(sql, List.of(subject), look.viewpoint().at()).get(0);
  }

  private LoopPage loopPage(
      DSLContext sql, Point point, PointPlace place, Looking look, UnitsShown units) {
    ZoneId zone = place.site().zone();
    long number = point.id().number();
    Judging.Judged judged = judged(sql, point, look);
    LoopPanel.Loop loop =
        new LoopPanel.Loop(
            number,
            point.tag(),
            zone,
            Combinations.fingerprint(judged.chain()),
            units,
            look.past() ? look.viewpoint() : Viewpoint.LATEST);
    return new LoopPage(
        point.tag(),
        number,
        "/loops/" + PathSegment.of(point.tag()),
        place.site().name(),
        place.train().id().number(),
        place.train().code(),
        place.machine().name(),
        about(point.details()),
        judged.judgement().verdict().word(),
        Headline.of(judged.judgement()),
        look.shown(),
        Drawing.of(judged),
        Shown.rows(judged.judgement()),
        parts(judged, zone, units),
        ChannelLines.of(channels.ofPoint(sql, new PointId(number))),
        panels.stream().flatMap(panel -> panel.actions(loop).stream()).toList(),
        panels.stream().map(p -> new PanelShown(p.template(), p.model(sql, loop))).toList(),
        history(sql, loop));
  }

  /** What was fitted and what was done, the newest first. */
  private List<EventLine> history(DSLContext sql, LoopPanel.Loop loop) {
    Stream<EventLine> fitted =
        events.ofPoint(sql, loop.point(), loop.viewpoint()).stream()
            .map(event -> line(event, loop.zone()));
    Stream<EventLine> done =
        stories.stream()
            .flatMap(story -> story.story(sql, loop, MOST_TOLD).stream())
            .map(told -> line(told, loop.zone()));
    return Stream.concat(fitted, done)
        .sorted(Comparator.comparing(EventLine::at).reversed())
        .toList();
  }

  private static EventLine line(LoopStory.Told told, ZoneId zone) {
    return new EventLine(
        told.at(),
        SiteMoment.shown(told.at(), zone),
        told.kind(),
        told.href(),
        told.verdict(),
        told.note(),
        told.by(),
        List.of());
  }

  private static String about(PointDetails details) {
    List<String> words = new ArrayList<>();
    words.add(details.kind().word());
    add(words, details.place());
    if (details.facing().angleDegrees() != null) {
      String from = details.facing().viewingEnd();
      words.add(
          Numbers.plain(details.facing().angleDegrees())
              + "° from vertical"
              + (from.isEmpty() ? "" : " seen from " + from));
    }
    add(
        words,
        details.surroundings().shaftAlloy().isEmpty()
            ? ""
            : "shaft " + details.surroundings().shaftAlloy());
    add(words, details.pairTag().isEmpty() ? "" : "pair " + details.pairTag());
    if (details.approvedGap() != null) {
      words.add("approved gap " + details.approvedGap());
    }
    return String.join(" · ", words);
  }

  private static void add(List<String> words, String word) {
    if (!word.isEmpty()) {
      words.add(word);
    }
  }

  private static List<PartLine> parts(Judging.Judged judged, ZoneId zone, UnitsShown units) {
    List<loopwright.matching.Slot> slots = judged.view().slots();
    List<PartLine> lines = new ArrayList<>();
    for (Placed placed : judged.chain()) {
      int at = position(judged.chain(), placed, slots.size());
      loopwright.matching.Slot slot = slots.get(at);
      lines.add(
          new PartLine(
              Words.slot(placed.slot(), slot),
              placed.content().component().isPresent()
                  ? (Long) placed.content().component().getAsLong()
                  : null,
              Shown.words(slot),
              slot.part().map(Shown::about).orElse(""),
              slot.part().map(part -> Shown.length(part.length(), units)).orElse(""),
              SiteMoment.day(placed.span().from(), zone).toString(),
              placed.source()));
    }
    return lines;
  }

  /** The view's slots are the probe, the path as placed, and the driver. */
  private static int position(List<Placed> chain, Placed placed, int slots) {
    if (placed.slot() == Slot.PROBE) {
      return 0;
    }
    if (placed.slot() == Slot.DRIVER) {
      return slots - 1;
    }
    return 1
        + (int)
            chain.stream()
                .filter(p -> p.slot().isPath() && p.slot().compareTo(placed.slot()) < 0)
                .count();
  }

  private static EventLine line(LoopEvent event, ZoneId zone) {
    return new EventLine(
        event.happenedAt(),
        SiteMoment.shown(event.happenedAt(), zone),
        event.kind(),
        null,
        event.verdict(),
        event.note(),
        "entered by %s on %s: %s"
            .formatted(event.who(), SiteMoment.shown(event.enteredAt(), zone), event.reason()),
        event.findings());
  }
}
