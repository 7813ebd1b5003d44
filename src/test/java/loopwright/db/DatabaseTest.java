package loopwright.db;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;
import static loopwright.db.gen.Tables.LOOP_EVENT;
import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.BrokenBarrierException;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class DatabaseTest {
  private static final Act ACT = new Act(null, "A. Tester", "administrator", "test", "to see");

  private final Engine engine;
  private Database database;

  DatabaseTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(new TestClock("2026-03-01T10:15:30.123456789Z"));
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private SiteRecord site(Tx tx, String code) {
    SiteRecord site = tx.row(SITE);
    site.setCode(code);
    site.setName("Site " + code);
    site.setZone("Europe/Berlin");
    return tx.insert(site);
  }

  @Test
  void ofTwoChangesThatWaitForEachOtherOneIsToldToRepeat() throws Exception {
    database.write(ACT, tx -> site(tx, "A1"));
    database.write(ACT, tx -> site(tx, "B1"));
    CyclicBarrier both = new CyclicBarrier(2);
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try {
      List<Future<String>> answers =
          List.of(
              threads.submit(() -> locked("A1", "B1", both)),
              threads.submit(() -> locked("B1", "A1", both)));
      List<String> told = List.of(answers.get(0).get(), answers.get(1).get());
      assertThat(told).containsExactlyInAnyOrder("done", engine == Engine.H2 ? "done" : "D-116");
    } finally {
      threads.shutdownNow();
    }
  }

  /** Changes first one site and then the other; on a server both changes are then under way. */
  private String locked(String first, String second, CyclicBarrier both) {
    try {
      return database.write(
          ACT,
          tx -> {
            hold(tx, first);
            if (engine != Engine.H2) {
              await(both);
            }
            hold(tx, second);
            return "done";
          });
    } catch (Refused refused) {
      return refused.problem().code();
    }
  }

  private static void hold(Tx tx, String code) {
    tx.sql().selectFrom(SITE).where(SITE.CODE.eq(code)).forUpdate().fetch();
  }

  private static void await(CyclicBarrier both) {
    try {
      both.await(30, TimeUnit.SECONDS);
    } catch (InterruptedException | BrokenBarrierException | TimeoutException broken) {
      throw new AssertionError(broken);
    }
  }

  @Test
  void aWriteIsOneJournaledChange() {
    SiteRecord site = database.write(ACT, tx -> site(tx, "A1"));
    assertThat(site.getAdopting()).isTrue();
    String body =
        database.read(
            sql ->
                new String(
                    sql.select(JOURNAL_ENTRY.BODY)
                        .from(JOURNAL_ENTRY)
                        .where(JOURNAL_ENTRY.CHANGE_ID.eq(site.getChangeId()))
                        .fetchSingle()
                        .value1(),
                    StandardCharsets.UTF_8));
    assertThat(body)
        .contains("\"at\":\"2026-03-01T10:15:30.123456Z\"")
        .contains("\"reason\":\"to see\"")
        .contains("\"code\":\"A1\"")
        .contains("\"adopting\":\"true\"");
  }

  @Test
  void whatFailsLeavesNothingBehind() {
    long headBefore = head();
    assertThatThrownBy(
            () ->
                database.write(
                    ACT,
                    tx -> {
                      site(tx, "GONE");
                      throw new Refused(DbProblem.NOT_FOUND, "thing", "x");
                    }))
        .isInstanceOf(Refused.class);
    assertThat(head()).isEqualTo(headBefore);
    int left = database.read(sql -> sql.fetchCount(SITE, SITE.CODE.eq("GONE")));
    int changes = database.read(sql -> sql.fetchCount(CHANGE));
    int entries =
        database.read(sql -> sql.fetchCount(JOURNAL_ENTRY, JOURNAL_ENTRY.IS_LAST.isTrue()));
    assertThat(left).isZero();
    assertThat(changes).isEqualTo(entries);
  }

  private long head() {
    return database.read(sql -> sql.selectFrom(JOURNAL_HEAD).fetchSingle().getSeq());
  }

  @Test
  void theSecondSaverOfOneReadingIsRefused() {
    long id = database.write(ACT, tx -> site(tx, "B1")).getId();
    SiteRecord stale = database.read(sql -> sql.fetchSingle(SITE, SITE.ID.eq(id)));
    database.write(
        ACT,
        tx -> {
          SiteRecord fresh = tx.sql().fetchSingle(SITE, SITE.ID.eq(id));
          fresh.setName("First saver");
          tx.update(fresh);
          return null;
        });
    assertThatThrownBy(
            () ->
                database.write(
                    ACT,
                    tx -> {
                      stale.setName("Second saver");
                      tx.update(stale);
                      return null;
                    }))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(DbProblem.STALE));
    assertThat(database.read(sql -> sql.fetchSingle(SITE, SITE.ID.eq(id))).getName())
        .isEqualTo("First saver");
  }

  @Test
  void theProgramsOwnAccountCanNotRewriteHistory() {
    database.write(ACT, tx -> site(tx, "C1"));
    assertThatThrownBy(() -> database.derive(sql -> sql.deleteFrom(JOURNAL_ENTRY).execute()))
        .isInstanceOf(DataAccessException.class);
    assertThatThrownBy(
            () -> database.derive(sql -> sql.update(CHANGE).set(CHANGE.REASON, "x").execute()))
        .isInstanceOf(DataAccessException.class);
    assertThatThrownBy(() -> database.derive(sql -> sql.deleteFrom(LOOP_EVENT).execute()))
        .isInstanceOf(DataAccessException.class);
  }
}
