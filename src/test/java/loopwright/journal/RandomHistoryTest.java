package loopwright.journal;

import static loopwright.db.gen.Tables.CALIBRATION_DRAFT;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Journaled;
import loopwright.db.Owner;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationDraftRecord;
import loopwright.db.gen.tables.records.ChannelSettingRecord;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.jooq.Record;

/** Any history that goes through the door agrees; the journal alone tells every row of it. */
class RandomHistoryTest {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "try", "at random");

  @Property(tries = 12)
  void anyHistoryAgreesAndAnyChangeBehindTheDoorShows(
      @ForAll @Size(min = 1, max = 25) List<@IntRange(min = 0, max = 7) Integer> steps,
      @ForAll Random random) {
    try (Database database = Engine.H2.open(new TestClock("2026-03-01T10:15:30Z"))) {
      FullWorld.fill(database);
      steps.forEach(step -> step(database, step, random));
      assertThat(Verification.of(database).disagreement()).isNull();
      everyRowIsTold(database);
      tamper(database, random);
      assertThat(Verification.of(database).agrees()).isFalse();
    }
  }

  private static void step(Database database, int kind, Random random) {
    try {
      database.write(
          ACT,
          tx -> {
            for (int i = random.nextInt(3); i >= 0; i--) {
              act(tx, kind, random);
            }
            if (random.nextInt(4) == 0) {
              throw new Refused(DbProblem.STALE);
            }
            return null;
          });
    } catch (Refused undone) {
      assertThat(undone.problem()).isEqualTo(DbProblem.STALE);
    }
  }

  private static void act(Tx tx, int kind, Random random) {
    switch (kind) {
      case 0, 1 -> addSite(tx, random);
      case 2, 3 -> editSite(tx, random);
      case 4 -> addDraft(tx, random);
      case 5 -> tx.sql().selectFrom(CALIBRATION_DRAFT).limit(1).fetch().forEach(tx::delete);
      case 6 -> addSetting(tx, random);
      default -> editDraft(tx, random);
    }
  }

  private static void addSite(Tx tx, Random random) {
    SiteRecord site = tx.row(SITE);
    site.setCode(Long.toHexString(random.nextLong()));
    site.setName(words(random));
    site.setZone("UTC");
    tx.insert(site);
  }

  private static void editSite(Tx tx, Random random) {
    List<SiteRecord> sites = tx.sql().selectFrom(SITE).orderBy(SITE.ID).fetch();
    SiteRecord site = sites.get(random.nextInt(sites.size()));
    site.setName(words(random));
    site.setAdopting(random.nextBoolean());
    tx.update(site);
  }

  private static void addDraft(Tx tx, Random random) {
    CalibrationDraftRecord draft = tx.row(CALIBRATION_DRAFT);
    draft.setPointId(1L);
    draft.setPersonId(1L);
    draft.setStage(Integer.toHexString(random.nextInt()));
    draft.setTyped(words(random).repeat(1 + random.nextInt(200)));
    draft.setSavedAt(Tx.moment(java.time.Instant.ofEpochSecond(random.nextInt(), 999_999_999)));
    tx.insert(draft);
  }

  private static void editDraft(Tx tx, Random random) {
    tx.sql()
        .selectFrom(CALIBRATION_DRAFT)
        .limit(1)
        .fetch()
        .forEach(
            draft -> {
              draft.setTyped(words(random));
              draft.setSavedAt(
                  Tx.moment(java.time.Instant.ofEpochSecond(random.nextInt(), 123_456_789)));
              tx.update(draft);
            });
  }

  private static void addSetting(Tx tx, Random random) {
    ChannelSettingRecord setting = tx.row(loopwright.db.gen.Tables.CHANNEL_SETTING);
    setting.setChannelId(1L);
    setting.setBasis("found");
    setting.setValidFrom(Tx.moment(java.time.Instant.ofEpochSecond(random.nextInt())));
    setting.setAlertHigh(new BigDecimal(random.nextInt()).movePointLeft(6)); // more than is kept
    setting.setZeroVolts(new BigDecimal(random.nextInt(20_000_000)).movePointLeft(6).negate());
    tx.insert(setting);
  }

  private static String words(Random random) {
    String letters = "abc \u00b5\u00fc\"\\\n\t\u20ac\ud83d\ude00'0.50";
    StringBuilder words = new StringBuilder();
    for (int i = random.nextInt(20); i >= 0; i--) {
      words.appendCodePoint(letters.codePoints().skip(random.nextInt(15)).findFirst().orElse('x'));
    }
    return words.toString();
  }

  private static void everyRowIsTold(Database database) {
    VerificationStore store = new VerificationStore();
    for (Journaled table : Journaled.all()) {
      database.<Void>read(
          sql -> {
            store.rows(
                sql,
                table,
                chunk ->
                    chunk.forEach(
                        row -> {
                          Replay replay = new Replay(table, row.key());
                          store.entries(
                              sql,
                              all ->
                                  all.forEach(entry -> replay.read(CheckedEntry.of(entry).body())));
                          assertThat(replay.against(row.rows()).sentence())
                              .contains("its columns are as told");
                        }));
            return null;
          });
    }
  }

  private static void tamper(Database database, Random random) {
    try (Owner owner = new Owner(database)) {
      owner.disarm();
      if (random.nextBoolean()) {
        Record site = owner.secretly(sql -> sql.selectFrom(SITE).limit(1).fetchSingle());
        owner.secretly(
            sql ->
                sql.update(SITE)
                    .set(SITE.NAME, site.get(SITE.NAME) + ".")
                    .where(SITE.ID.eq(site.get(SITE.ID)))
                    .execute());
      } else {
        owner.secretly(
            sql ->
                sql.deleteFrom(JOURNAL_ENTRY)
                    .where(JOURNAL_ENTRY.SEQ.eq(1L + random.nextInt(5)))
                    .execute());
      }
    }
  }
}
