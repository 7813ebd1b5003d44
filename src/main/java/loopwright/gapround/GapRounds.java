package loopwright.gapround;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.db.Chunks;
import loopwright.db.Database;
import loopwright.fieldcheck.FieldCheckProblem;
import loopwright.fieldcheck.GapReading;
import loopwright.fieldcheck.GapReadings;
import loopwright.fieldcheck.MachineState;
import loopwright.fieldcheck.NewGapReading;
import loopwright.plant.MachineId;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.sheet.Complaints;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;

/** Brings gap rounds in and compares them with what was read before. */
public final class GapRounds {
  private static final int AT_ONCE = 1_000;
  private static final int MOST_TAGS_KEPT = 2_000;

  private final Database database;
  private final Plant plant;
  private final GapReadings readings;
  private final InstantSource clock;
  private final RoundStore store = new RoundStore();

  public GapRounds(Database database, Plant plant, GapReadings readings, InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.readings = readings;
    this.clock = clock;
  }

  /**
   * What became of a file.
   *
   * @param round its number; 0 where nothing was written because something is wrong
   */
  public record Brought(long round, Complaints complaints) {}

  /**
   * Takes a file: all its rows whose tag is known, or nothing where a row can't be read. Rows of
   * unknown tags are reported.
   *
   * @param usual where a row was taken that doesn't say
   * @throws Refused {@link RoundProblem#NOTHING}
   */
  public Brought bring(String name, byte[] bytes, TappingPoint usual, String readBy, Act act) {
    Complaints complaints = new Complaints();
    List<RoundFile.Line> lines = RoundFile.read(name, bytes, usual, complaints);
    Matched matched = database.read(sql -> matched(sql, name, lines, readBy, complaints));
    if (!complaints.isEmpty()) {
      return new Brought(0, complaints);
    }
    if (matched.fresh().isEmpty()) {
      String tag = matched.unmatched().stream().findFirst().orElse("");
      throw new Refused(RoundProblem.NOTHING, name, tag);
    }
    long round =
        database.write(
            act,
            tx -> {
              int fresh = readings.keepAll(tx, matched.fresh());
              return store.add(
                  tx,
                  name,
                  lines.size(),
                  fresh,
                  matched.rowsUnmatched(),
                  matched.unmatched().stream().limit(MOST_TAGS_KEPT).toList());
            });
    return new Brought(round, complaints);
  }

  private record Matched(List<NewGapReading> fresh, Set<String> unmatched, int rowsUnmatched) {}

  private Matched matched(
      DSLContext sql,
      String name,
      List<RoundFile.Line> lines,
      String readBy,
      Complaints complaints) {
    List<NewGapReading> fresh = new ArrayList<>(lines.size());
    Set<String> unmatched = new LinkedHashSet<>();
    int rows = 0;
    Map<MachineId, ZoneId> zones = new HashMap<>();
    for (List<RoundFile.Line> some : Chunks.of(lines, AT_ONCE)) {
      Map<String, Point> points =
          plant.pointsTagged(sql, some.stream().map(RoundFile.Line::tag).toList());
      for (RoundFile.Line line : some) {
        Point point = points.get(plant.tagKey(sql, line.tag()));
        if (point == null) {
          unmatched.add(line.tag());
          rows++;
        } else {
          ZoneId zone = zones.computeIfAbsent(point.machine(), machine -> zone(sql, point.id()));
          reading(name, line, point, zone, readBy, complaints).ifPresent(fresh::add);
        }
      }
    }
    return new Matched(fresh, unmatched, rows);
  }

  private ZoneId zone(DSLContext sql, PointId point) {
    return plant.place(sql, point).orElseThrow().site().zone();
  }

  private Optional<NewGapReading> reading(
      String name,
      RoundFile.Line line,
      Point point,
      ZoneId zone,
      String readBy,
      Complaints complaints) {
    try {
      Instant at = moment(line.time(), zone);
      if (at.isAfter(clock.instant())) {
        throw new Refused(FieldCheckProblem.IN_FUTURE, line.time());
      }
      return Optional.of(
          new NewGapReading(
              point.id().number(),
              at,
              readBy,
              line.volts(),
              line.tap(),
              line.state(),
              line.warmth(),
              "",
              line.note(),
              "imported"));
    } catch (Refused wrong) {
      String column = wrong.problem() == FieldCheckProblem.IN_FUTURE ? "time" : "volts";
      complaints.add(
          RoundProblem.NOT_VOLTS,
          name,
          line.row().line(),
          column,
          String.valueOf(wrong.getMessage()));
    } catch (IllegalArgumentException | DateTimeException wrong) {
      complaints.add(
          RoundProblem.NO_MOMENT,
          name,
          line.row().line(),
          "time",
          line.time(),
          "Write it like 2026-03-14 09:40 on the site's clock, or with its offset:"
              + " 2026-03-14T09:40+01:00.");
    }
    return Optional.empty();
  }

  /** On the site's clock, unless it names its offset. */
  private static Instant moment(String typed, ZoneId zone) {
    String text = typed.strip().replace(' ', 'T');
    if (text.matches(".*(Z|[+-]\\d\\d:\\d\\d)$") && text.contains("T")) {
      return OffsetDateTime.parse(text).toInstant();
    }
    String[] halves = text.split("T", -1);
    if (halves.length != 2) {
      throw new IllegalArgumentException("no moment");
    }
    LocalDate day = SiteMoment.day(halves[0]);
    return SiteMoment.of(day, SiteMoment.time(halves[1]), zone);
  }

  Optional<RoundStore.Round> round(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  /** Newest first. */
  List<RoundStore.Round> rounds(DSLContext sql, long before, int most) {
    return store.before(sql, before, most);
  }

  /** Every reading of a round beside the one that compares with it, ranked. */
  List<Ranking.Ranked> ranked(DSLContext sql, RoundStore.Round round) {
    List<GapReading> now = readings.ofChange(sql, round.change());
    Map<Long, Point> points = points(sql, now.stream().map(GapReading::point).toList());
    Map<MachineState, List<GapReading>> byState =
        now.stream().collect(Collectors.groupingBy(GapReading::state));
    List<Compared> compared = new ArrayList<>(now.size());
    byState.forEach((state, some) -> compared.addAll(compared(sql, state, some, points)));
    return Ranking.of(compared);
  }

  private List<Compared> compared(
      DSLContext sql, MachineState state, List<GapReading> some, Map<Long, Point> points) {
    Instant first = some.stream().map(GapReading::readAt).min(Instant::compareTo).orElseThrow();
    Map<Long, GapReading> before =
        readings.newest(sql, some.stream().map(GapReading::point).toList(), state, first);
    return some.stream()
        .filter(reading -> points.containsKey(reading.point()))
        .map(
            reading -> {
              Point point = Objects.requireNonNull(points.get(reading.point()));
              return new Compared(
                  point.tag(),
                  point.details().pairTag(),
                  reading,
                  Optional.ofNullable(before.get(reading.point())).filter(reading::comparesWith));
            })
        .toList();
  }

  private Map<Long, Point> points(DSLContext sql, Collection<Long> numbers) {
    Map<Long, Point> points = new HashMap<>();
    for (List<Long> some : Chunks.of(numbers, AT_ONCE)) {
      plant.points(sql, some).forEach(point -> points.put(point.id().number(), point));
    }
    return points;
  }

  GapReadings readings() {
    return readings;
  }

  /** What a round says, for the command line: one line a loop that is worth a visit. */
  public List<String> report(long id, int most) {
    return database.read(
        sql -> {
          RoundStore.Round round = store.one(sql, id).orElseThrow();
          List<String> lines = new ArrayList<>();
          lines.add(RoundWords.summary(round));
          if (!round.unmatchedTags().isEmpty()) {
            lines.add("Unmatched tags: " + String.join(", ", round.unmatchedTags()));
          }
          List<Ranking.Ranked> worth =
              ranked(sql, round).stream().filter(Ranking.Ranked::isWorthAVisit).toList();
          lines.add(worth.size() + " loops are worth a visit.");
          worth.stream()
              .limit(most)
              .forEach(each -> lines.add(each.loop().tag() + ": " + RoundWords.of(each)));
          return lines;
        });
  }
}
