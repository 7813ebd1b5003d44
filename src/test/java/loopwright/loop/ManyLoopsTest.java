package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Path;
import java.util.Locale;
import loopwright.alloy.AlloyBook;
import loopwright.calibration.LatestAsLefts;
import loopwright.calibration.RegisteredProfiles;
import loopwright.circuit.Circuits;
import loopwright.datasheet.DataSheets;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import loopwright.matching.rules.StandardRules;
import loopwright.plant.PlacesAsJudged;
import loopwright.plant.Plant;
import loopwright.plant.PointWatch;
import loopwright.register.FactsWatch;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyDetails;
import loopwright.register.PartSearch;
import loopwright.register.PartsAsJudged;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.units.ScaleFactor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A plant of 100,000 loops is judged in one pass, chunk by chunk, in a database on disk. Time and
 * memory are told, not asserted: they belong to the machine.
 */
@Tag("long")
class ManyLoopsTest {
  private static final int LOOPS = Integer.getInteger("loopwright.loops", 100_000);
  private static final int CHUNK = LOOPS / 5;
  private static final Act ACT = Act.ofProgram("test", "many loops");

  @TempDir static Path folder;
  private static Database database;
  private static Standings standings;

  @BeforeAll
  static void fill() {
    long began = System.nanoTime();
    TestClock clock = new TestClock("2026-03-01T10:15:30Z");
    database = Database.open(new Place.Folder(folder), new JournalStore(), clock);
    database.write(
        ACT,
        tx -> {
          new FamilyBook()
              .add(
                  tx,
                  FamilyDetails.of("Q8", "8 mm", "A", ScaleFactor.millivoltsPerMil("200"))
                      .targetAlloy("4140")
                      .build());
          return RawWorld.machine(tx, "K-1");
        });
    for (int from = 0; from < LOOPS; from += CHUNK) {
      int first = from + 1;
      int last = from + CHUNK;
      database.write(ACT, tx -> points(tx.sql(), tx.changeId(), first, last));
    }
    standings = standings(clock);
    System.out.printf(Locale.ROOT, "filled in %.1f s%n", (System.nanoTime() - began) / 1e9);
  }

  private static Standings standings(TestClock clock) {
    DataSheets sheets = new DataSheets(DataSheets.SheetWatch.NOBODY);
    Register register = new Register(FactsWatch.NOBODY);
    RegisteredParts parts =
        new RegisteredParts(new PartsAsJudged(sheets), register, new PartSearch());
    Judging.Sources sources =
        new Judging.Sources(
            parts,
            new PlacesAsJudged()::places,
            new Circuits(PointWatch.NOBODY),
            new AlloyBook(AlloyBook.AlloyWatch.NOBODY)::asJudged,
            new LatestAsLefts(
                new RegisteredProfiles(
                    new ToleranceProfiles(),
                    register,
                    new FamilyBook(),
                    new Plant(PointWatch.NOBODY))),
            Allowances.NONE);
    return new Standings(new Judging(sources, StandardRules.book()), clock);
  }

  /** Every tenth cable is half a metre too long. Numbers: probe 3n, cable 3n + 1, driver 3n + 2. */
  private static int points(org.jooq.DSLContext sql, long change, int first, int last) {
    sql.execute(
        "INSERT INTO point (id, machine_id, tag, tag_key, kind, shaft_alloy, change_id)"
            + " SELECT x, 1, 'V-' || x, 'V-' || x, 'radial vibration', '4140', "
            + change
            + " FROM system_range("
            + first
            + ", "
            + last
            + ")");
    part(sql, change, first, last, 0, "probe", "1");
    part(
        sql,
        change,
        first,
        last,
        1,
        "extension cable",
        "CASE WHEN MOD(x, 10) = 0 THEN 4.5 ELSE 4 END");
    part(sql, change, first, last, 2, "driver", "5");
    placed(sql, change, first, last, 0, "probe");
    placed(sql, change, first, last, 1, "path-1");
    return placed(sql, change, first, last, 2, "driver");
  }

  private static void part(
      org.jooq.DSLContext sql,
      long change,
      int first,
      int last,
      int at,
      String kind,
      String metres) {
    sql.execute(
        """
        INSERT INTO component (id, kind, maker, model, serial, label, label_key, identity_key, family_id,
          length_m, length_typed, length_unit, length_evidence, tip_mm, scale_factor, scale_factor_unit, state, change_id)
        SELECT 3 * x + %s, '%s', 'A', 'M', 'S' || x, 'S' || x, 'S' || x, 'A|M%s|' || x, 1,
          %s, CAST(%s AS VARCHAR), 'm', 'read on part', %s, %s, 'mV/mil', 'fitted', %s
        FROM system_range(%s, %s)
        """
            .formatted(
                at,
                kind,
                at,
                metres,
                metres,
                at == 1 ? "NULL" : "8",
                at == 1 ? "NULL" : "200",
                change,
                first,
                last));
  }

  private static int placed(
      org.jooq.DSLContext sql, long change, int first, int last, int at, String slot) {
    sql.execute(
        """
        INSERT INTO placement (id, point_id, slot, content, component_id, valid_from, valid_until, source, change_id)
        SELECT 3 * x + %s, x, '%s', 'part', 3 * x + %s, TIMESTAMP WITH TIME ZONE '2024-01-01 00:00:00+00',
          TIMESTAMP WITH TIME ZONE '9999-12-31 00:00:00+00', 'import', %s
        FROM system_range(%s, %s)
        """
            .formatted(at, slot, at, change, first, last));
    return sql.execute(
        """
        INSERT INTO occupancy (placement_id, point_id, slot, content, occupant, occupant_channel, component_id,
          valid_from, valid_until)
        SELECT id, point_id, slot, content, component_id, 1, component_id, valid_from, valid_until
        FROM placement WHERE point_id BETWEEN %s AND %s AND slot = '%s'
        """
            .formatted(first, last, slot));
  }

  @AfterAll
  static void close() {
    if (database != null) {
      database.close();
    }
  }

  @Test
  void aHundredThousandLoopsAreJudgedInOnePass() {
    System.gc();
    ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    long from = System.nanoTime();
    int judged = standings.refreshAll(database);
    double seconds = (System.nanoTime() - from) / 1e9;
    System.out.println(
        String.format(
            Locale.ROOT,
            "%d loops judged in %.1f s (%.0f a second), heap at most %d MB of %d MB",
            judged,
            seconds,
            judged / seconds,
            peakMegabytes(),
            Runtime.getRuntime().maxMemory() >> 20));
    assertThat(judged).isEqualTo(LOOPS);
    int off =
        database.read(
            sql ->
                sql.fetchValue(
                            "SELECT COUNT(*) FROM loop_verdict WHERE verdict = 'refused' AND balance_m = 0.5")
                        instanceof Number number
                    ? number.intValue()
                    : -1);
    assertThat(off).isEqualTo(LOOPS / 10);
  }

  private static long peakMegabytes() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .mapToLong(pool -> pool.getPeakUsage().getUsed())
            .sum()
        >> 20;
  }
}
