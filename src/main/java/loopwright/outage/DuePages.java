package loopwright.outage;

import io.javalin.http.Context;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import loopwright.db.Database;
import loopwright.plant.MachineWalk;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.Site;
import loopwright.plant.TrainRow;
import loopwright.problem.Text;
import loopwright.sheet.CsvText;
import loopwright.time.SiteMoment;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** The due list as CSV, and due dates with outages as a calendar file. */
public final class DuePages implements Pages {
  private static final List<String> HEADINGS =
      List.of(
          "site",
          "train",
          "machine",
          "tag",
          "due_on",
          "days_left",
          "interval_months",
          "judged",
          "reasons");

  private final Database database;
  private final Plant plant;
  private final Outages outages;
  private final Suggestions suggestions;
  private final InstantSource clock;
  private final Supplier<UUID> register;

  /**
   * @param register identity of this database, so that entries of two registers stay apart
   */
  public DuePages(
      Database database,
      Plant plant,
      Outages outages,
      Suggestions suggestions,
      InstantSource clock,
      Supplier<UUID> register) {
    this.database = database;
    this.plant = plant;
    this.outages = outages;
    this.suggestions = suggestions;
    this.clock = clock;
    this.register = register;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/due.csv", Permission.READ, this::csv);
    routes.get("/outages.ics", Permission.READ, this::calendar);
  }

  private record Line(Site site, Suggestion loop) {}

  /** Train by train, loops that have a due date or something that speaks for them. */
  private void each(DSLContext sql, Consumer<Line> taken) {
    for (Site site : plant.sites(sql)) {
      LocalDate today = SiteMoment.day(clock.instant(), site.zone());
      for (TrainRow row : plant.trains(sql, site.id())) {
        List<Outages.Loop> loops = new ArrayList<>();
        for (MachineWalk walk : plant.walk(sql, row.train().id())) {
          walk.points().stream()
              .filter(Point::inUse)
              .forEach(
                  point ->
                      loops.add(
                          new Outages.Loop(point, walk.machine().name(), row.train().code())));
        }
        suggestions.of(sql, loops, today, today).forEach(one -> taken.accept(new Line(site, one)));
      }
    }
  }

  private void csv(Context http) {
    CsvText csv = new CsvText().row(HEADINGS);
    database.snapshot(
        sql -> {
          List<Line> lines = new ArrayList<>();
          each(
              sql,
              line -> {
                if (line.loop().due() != null || !line.loop().reasons().isEmpty()) {
                  lines.add(line);
                }
              });
          lines.stream()
              .sorted(
                  Comparator.comparing(
                      line -> line.loop().due(), Comparator.nullsLast(Comparator.naturalOrder())))
              .forEach(line -> csv.row(cells(line)));
          return lines.size();
        });
    http.contentType("text/csv; charset=utf-8");
    http.header("Content-Disposition", "attachment; filename=\"due-list.csv\"");
    http.result(csv.bytes());
  }

  private List<String> cells(Line line) {
    Suggestion loop = line.loop();
    LocalDate due = loop.due();
    LocalDate today = SiteMoment.day(clock.instant(), line.site().zone());
    Integer months = loop.loop().point().details().intervalMonths();
    return List.of(
        line.site().name(),
        loop.loop().train(),
        loop.loop().machine(),
        loop.loop().point().tag(),
        due == null ? "" : due.toString(),
        due == null ? "" : Long.toString(due.toEpochDay() - today.toEpochDay()),
        months == null ? "" : months.toString(),
        loop.verdict(),
        loop.inWords());
  }

  private record Day(String train, LocalDate due) {}

  private void calendar(Context http) {
    CalendarFile file = new CalendarFile(clock.instant());
    String identity = register.get().toString();
    database.snapshot(
        sql -> {
          for (Outage outage : outages.newest(sql)) {
            file.event(
                outage.number() + "@" + identity,
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
          Map<Day, List<String>> due = new LinkedHashMap<>();
          each(sql, line -> gather(due, line.loop()));
          due.forEach(
              (day, tags) ->
                  file.event(
                      "due-" + day.train() + "-" + day.due() + "@" + identity,
                      day.due(),
                      day.due(),
                      "Due on " + day.train() + ": " + tags.size() + " loops",
                      String.join(", ", tags)));
          return due.size();
        });
    http.contentType("text/calendar; charset=utf-8");
    http.header("Content-Disposition", "attachment; filename=\"outages.ics\"");
    http.result(file.bytes());
  }

  private static void gather(Map<Day, List<String>> due, Suggestion loop) {
    LocalDate day = loop.due();
    if (day != null) {
      due.computeIfAbsent(new Day(loop.loop().train(), day), any -> new ArrayList<>())
          .add(loop.loop().point().tag());
    }
  }
}
