package loopwright.outage;

import io.javalin.http.Context;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import loopwright.db.Database;
import loopwright.plant.MachineWalk;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.Site;
import loopwright.plant.TrainRow;
import loopwright.sheet.CsvText;
import loopwright.time.SiteMoment;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** The due list as CSV. */
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
  private final Suggestions suggestions;
  private final InstantSource clock;

  public DuePages(Database database, Plant plant, Suggestions suggestions, InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.suggestions = suggestions;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/due.csv", Permission.READ, this::csv);
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
}
