package loopwright.journal;

import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static loopwright.db.gen.Tables.COMPONENT;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import loopwright.db.Act;
import loopwright.db.Backup;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.db.Restore;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationReadingRecord;
import loopwright.db.gen.tables.records.CalibrationRecord;
import loopwright.db.gen.tables.records.ComponentRecord;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** Measures, and says in the log; asserts agreement only. */
@Tag("long")
class VerificationSpeedTest {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "try", "to measure");
  private static final int ENTRIES = Integer.getInteger("loopwright.speed.entries", 200_000);

  @TempDir private Path root;
  private Path folder;

  @Test
  void entriesASecond() {
    folder = root.resolve("data");
    try (Database database =
        Database.open(
            new Place.Folder(folder), new JournalStore(), new TestClock("2026-03-01T10:15:30Z"))) {
      FullWorld.fill(database);
      long started = System.nanoTime();
      IntStream.range(0, ENTRIES).forEach(i -> database.write(ACT, tx -> write(tx, i)));
      double writing = (System.nanoTime() - started) / 1e9;
      started = System.nanoTime();
      Verdict verdict = Verification.of(database);
      double verifying = (System.nanoTime() - started) / 1e9;
      assertThat(verdict.disagreement()).isNull();
      LoggerFactory.getLogger(VerificationSpeedTest.class)
          .warn(
              "{} entries written in {} s; {} entries and {} rows verified in {} s",
              ENTRIES,
              Math.round(writing),
              verdict.entries(),
              verdict.rows(),
              verifying);
      keep(database);
    }
  }

  private void keep(Database database) {
    long started = System.nanoTime();
    Path file = folder.resolveSibling(folder.getFileName() + ".zip");
    Backup.Taken taken = Backup.take(database, file, new TestClock("2026-03-01T10:15:30Z"));
    double backingUp = (System.nanoTime() - started) / 1e9;
    started = System.nanoTime();
    Path restored = folder.resolveSibling(folder.getFileName() + "-restored");
    Restore.from(
        file,
        restored,
        new JournalStore(),
        new TestClock("2026-03-01T10:15:30Z"),
        copy ->
            Optional.ofNullable(Verification.of(copy).disagreement()).map(Disagreement::sentence));
    LoggerFactory.getLogger(VerificationSpeedTest.class)
        .warn(
            "{} rows backed up in {} s to {} MB, restored and verified in {} s",
            taken.rows(),
            backingUp,
            taken.bytes() / 1_000_000,
            (System.nanoTime() - started) / 1e9);
  }

  /** Half of the changes register a part, half keep a calibration of nine readings. */
  private static Void write(Tx tx, int i) {
    if (i % 2 == 0) {
      ComponentRecord part = tx.sql().fetchSingle(COMPONENT, COMPONENT.ID.eq(1L)).copy();
      part.setLabel("P" + i);
      part.setLabelKey("P" + i);
      part.setIdentityKey("ANYONE|M-1|P" + i);
      part.setState("in stock");
      tx.insert(part);
      return null;
    }
    CalibrationRecord calibration =
        tx.sql()
            .fetchSingle(
                loopwright.db.gen.Tables.CALIBRATION,
                loopwright.db.gen.Tables.CALIBRATION.ID.eq(1L))
            .copy();
    calibration.setNumber("N" + i);
    tx.insert(calibration);
    tx.insertGroup(calibration.getId(), readings(tx, calibration.getId()));
    return null;
  }

  private static List<CalibrationReadingRecord> readings(Tx tx, long calibration) {
    return IntStream.rangeClosed(1, 9)
        .mapToObj(
            i -> {
              CalibrationReadingRecord reading = tx.row(CALIBRATION_READING);
              reading.setCalibrationId(calibration);
              reading.setReadingNo((short) i);
              reading.setRun("up");
              reading.setGapTyped(i + "0");
              reading.setGapUm(254.0 * i);
              reading.setVoltsTyped("2." + i);
              reading.setVolts(-2.0 - i);
              return reading;
            })
        .toList();
  }
}
