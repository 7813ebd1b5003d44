package loopwright.drift;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.loop.DueLoops;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Which loops are due for calibration: the list, the first page, and a loop's own page. */
public final class DuePages implements Pages, LoopPanel, Need.Source {
  private static final int DUE_LISTED = 300;
  private static final int SOON_DAYS = 90;

  private final Database database;
  private final Page page;
  private final DueLoops due;
  private final InstantSource clock;

  public DuePages(Database database, Page page, DueLoops due, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.due = due;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/due", Permission.READ, this::list);
  }

  record DueLine(String tag, String href, String train, String due, String state) {}

  record Panel(String due, String href) {}

  private void list(Context http) {
    String train = http.queryParam("train");
    Long number = train != null && train.matches("\\d{1,18}") ? Long.valueOf(train) : null;
    Map<String, Object> model = new HashMap<>();
    model.put(
        "lines",
        database.read(
            sql ->
                due.until(sql, clock.instant(), SOON_DAYS, number, DUE_LISTED).stream()
                    .map(DuePages::line)
                    .toList()));
    model.put("days", SOON_DAYS);
    model.put("all", number != null);
    page.show(http, "drift/due", model);
  }

  private static DueLine line(DueLoops.Due loop) {
    return new DueLine(
        loop.tag(),
        "/loops/" + PathSegment.of(loop.tag()) + "/drift",
        loop.trainCode(),
        loop.dueOn().toString(),
        loop.overdue() ? "overdue" : "due soon");
  }

  /** One for each train with loops overdue, so that a neglected plant is no flood. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return due.overdueByTrain(sql, now).stream()
        .map(
            train ->
                new Need(
                    "attention",
                    4,
                    "/due?train=" + train.train(),
                    train.loops() == 1 ? "1 loop" : train.loops() + " loops",
                    train.trainCode() + ", " + train.site(),
                    train.train(),
                    "Calibration is overdue, since %s at the earliest.".formatted(train.oldest()),
                    train.oldest().atStartOfDay(ZoneOffset.UTC).toInstant(),
                    "planner",
                    "Plan them for the next stop."))
        .toList();
  }

  @Override
  public String template() {
    return "drift/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    String href = "/loops/" + PathSegment.of(loop.tag()) + "/drift";
    String words =
        loop.viewpoint().equals(Viewpoint.LATEST)
            ? due.of(sql, loop.point())
                .map(
                    day ->
                        day.isBefore(SiteMoment.day(clock.instant(), loop.zone()))
                            ? "Calibration was due on " + day + "."
                            : "Calibration is due on " + day + ".")
                .orElse("No due date: there is no interval or no as-left on record.")
            : "";
    return new Panel(words, href);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }
}
