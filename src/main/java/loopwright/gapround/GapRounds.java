package loopwright.gapround;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.fieldcheck.GapReadings;
import loopwright.fieldcheck.NewGapReading;
import loopwright.plant.Plant;
import loopwright.problem.Refused;
import loopwright.sheet.Complaints;
import org.jooq.DSLContext;

/**
 * Brings gap rounds in. A file is read twice, row by row: first to see whether all of it can be
 * read, then to keep it in one change; it is never held.
 */
public final class GapRounds {
  private final Database database;
  private final Plant plant;
  private final GapReadings readings;
  private final RoundStandings standings;
  private final Suspicions suspicions;
  private final InstantSource clock;
  private final RoundStore store = new RoundStore();

  public GapRounds(
      Database database,
      Plant plant,
      GapReadings readings,
      Suspicions suspicions,
      InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.readings = readings;
    this.standings = new RoundStandings(plant, readings);
    this.suspicions = suspicions;
    this.clock = clock;
  }

  /**
   * What became of a file.
   *
   * @param round its number; 0 where nothing was written because something is wrong
   */
  public record Brought(long round, Complaints complaints) {}

  /**
   * A file to take.
   *
   * @param name as people know it
   * @param file where it lies
   * @param usual where a row was taken that doesn't say
   * @param readBy who read the voltages, as far as is known
   */
  public record Given(String name, Path file, TappingPoint usual, String readBy) {}

  /**
   * Takes a file, CSV or workbook: all its rows whose tag is known, or nothing where a row can't be
   * read. Rows of unknown tags are reported.
   *
   * @throws Refused {@link RoundProblem#NOTHING}, or {@link RoundProblem#CHANGED} if somebody wrote
   *     the file meanwhile
   */
  public Brought bring(Given given, Act act) {
    Complaints complaints = new Complaints();
    Set<Long> points = new TreeSet<>();
    RoundMatch looked =
        database.read(
            sql ->
                matched(
                    sql,
                    given,
                    complaints,
                    some -> some.forEach(reading -> points.add(reading.point()))));
    if (!complaints.isEmpty()) {
      return new Brought(0, complaints);
    }
    if (points.isEmpty()) {
      String tag = looked.unmatched().stream().findFirst().orElse("");
      throw new Refused(RoundProblem.NOTHING, given.name(), tag);
    }
    return new Brought(database.write(act, tx -> keep(tx, given, points)), complaints);
  }

  private long keep(Tx tx, Given given, Set<Long> points) {
    readings.hold(tx, points);
    Complaints complaints = new Complaints();
    int[] fresh = new int[1];
    RoundMatch kept =
        matched(
            tx.sql(),
            given,
            complaints,
            some -> {
              refuseChanged(given, complaints.isEmpty() && points.containsAll(pointsOf(some)));
              fresh[0] += readings.keepHeld(tx, some);
            });
    refuseChanged(given, complaints.isEmpty());
    return store.add(
        tx,
        given.name(),
        kept.rows(),
        fresh[0],
        kept.rowsUnmatched(),
        List.copyOf(kept.unmatched()));
  }

  private static List<Long> pointsOf(List<NewGapReading> some) {
    return some.stream().map(NewGapReading::point).toList();
  }

  private static void refuseChanged(Given given, boolean isSame) {
    if (!isSame) {
      throw new Refused(RoundProblem.CHANGED, given.name());
    }
  }

  private RoundMatch matched(
      DSLContext sql, Given given, Complaints complaints, RoundMatch.Taker taker) {
    RoundMatch match =
        new RoundMatch(
            sql,
            plant,
            new RoundMatch.Bringing(given.name(), given.readBy(), clock.instant()),
            complaints,
            taker);
    RoundFile.read(given.name(), given.file(), given.usual(), complaints, match);
    match.end();
    return match;
  }

  Optional<RoundStore.Round> round(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  /** Newest first. */
  List<RoundStore.Round> rounds(DSLContext sql, long before, int most) {
    return store.before(sql, before, most);
  }

  /**
   * @param most loops that are told, worst first
   */
  RoundStandings.Standing standing(DSLContext sql, RoundStore.Round round, int most) {
    return standings.of(sql, round.change(), most);
  }

  /** Those of these loops that the round makes worth a visit. */
  List<Ranking.Ranked> worthAVisit(
      DSLContext sql, RoundStore.Round round, Collection<Long> points) {
    return standings.worthAVisit(sql, round.change(), points);
  }

  /** The same with what each loop lets one suspect. */
  List<Suspicions.Suspect> suspects(DSLContext sql, RoundStandings.Standing standing) {
    return suspicions.of(sql, standing.worst());
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
          RoundStandings.Standing standing = standing(sql, round, most);
          lines.add(standing.worth() + " loops are worth a visit.");
          suspects(sql, standing)
              .forEach(
                  each ->
                      lines.add((each.tag() + ": " + each.words() + " " + each.likely()).strip()));
          return lines;
        });
  }
}
