package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.testing.TestClock;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long lists take over a million parts in the embedded database. Times are printed, not
 * asserted: they depend on the machine. Asserted is what the pages hold.
 */
@Tag("long")
class MillionPartsTest {
  private static final int PARTS = 1_000_000;
  private static final int CHUNK = 50_000;

  @TempDir static Path folder;
  private static Database database;
  private static FamilyId family;
  private final PartSearch search = new PartSearch();
  private final List<String> told = new ArrayList<>();

  @BeforeAll
  static void fill() {
    Act act = Act.ofProgram("test", "many parts");
    Place place = new Place.Folder(folder);
    database = Database.open(place, new JournalStore(), new TestClock("2026-03-01T10:15:30Z"));
    FamilyBook book = new FamilyBook();
    database.write(
        act,
        tx -> {
          for (String code : List.of("Q8", "Q8L", "P11", "P25", "N5")) {
            family =
                book.add(
                    tx,
                    FamilyDetails.of(code, code, "A", ScaleFactor.millivoltsPerMil("200")).build());
          }
          return true;
        });
    for (int from = 0; from < PARTS; from += CHUNK) {
      int first = from;
      database.write(act, tx -> tx.sql().execute(someParts(tx.changeId(), first)));
    }
  }

  /**
   * Numbers are scattered over the labels, so that neighbours in the list lie far apart in the
   * table; kinds, lengths and states change from part to part, so that no filter finds a solid run.
   */
  private static String someParts(long change, int from) {
    return """
        INSERT INTO component (id, kind, maker, model, serial, label, label_key, identity_key, family_id,
          length_m, length_typed, length_unit, length_evidence, state, change_id)
        SELECT MOD(CAST(n AS BIGINT) * 611953, 1000003),
          CASE WHEN MOD(n, 50) = 0 THEN 'accelerometer'
            ELSE CASE MOD(n, 3) WHEN 0 THEN 'probe' WHEN 1 THEN 'extension cable' ELSE 'driver' END END,
          CASE MOD(n, 11) WHEN 0 THEN 'Sundqvard' WHEN 1 THEN 'Ardent' ELSE 'Nordling' END, 'M' || MOD(n, 7),
          s, s, s, 'X|' || s, 1 + MOD(n, 5),
          0.5 * (1 + MOD(n, 17)), CAST(0.5 * (1 + MOD(n, 17)) AS VARCHAR), 'm', 'read on part',
          CASE WHEN MOD(n, 97) = 0 THEN 'quarantined' WHEN MOD(n, 3) = 1 AND MOD(n, 2) = 0 THEN 'in stock'
            WHEN MOD(n, 7) < 2 THEN 'in stock' ELSE 'fitted' END,
          %d
        FROM (SELECT x AS n, 'SN-' || LPAD(CAST(x * 9 + MOD(x * 7, 9) AS VARCHAR), 7, '0') AS s
              FROM system_range(%d, %d))
        """
        .formatted(change, from + 1, from + CHUNK);
  }

  @AfterAll
  static void close() {
    if (database != null) {
      database.close();
    }
  }

  @Test
  void pagesStayFastAtAMillionParts() {
    ComponentQuery all = ComponentQuery.EVERYTHING;
    page("everything", all);
    page("everything backward", all.inOrder(ComponentQuery.Order.LABEL_BACKWARD));
    page("newest", all.inOrder(ComponentQuery.Order.NEWEST));
    page("kind", all.ofKind(PartKind.PROBE));
    page("rare kind", all.ofKind(PartKind.ACCELEROMETER));
    page("kind nobody has", all.ofKind(PartKind.BARRIER));
    page("kind + state", all.ofKind(PartKind.CABLE).inState(PartState.IN_STOCK));
    page("state", all.inState(PartState.QUARANTINED));
    page("state nobody is in", all.inState(PartState.SCRAPPED));
    page("family", all.ofFamily(family));
    page("length", all.ofLength(Length.ofMetres("4.5")));
    page("length nobody has", all.ofLength(Length.ofMetres("4.7")));
    page("maker", all.ofMaker("Ardent"));
    ComponentQuery choice =
        all.ofKind(PartKind.CABLE).ofFamily(family).ofLength(Length.ofMetres("4"));
    page("kind + family + length", choice);
    page("kind + family + length + state", choice.inState(PartState.IN_STOCK));
    page(
        "kind + family + length + rare state",
        choice.inState(PartState.QUARANTINED).ofMaker("Ardent"));
    page("kind + newest", all.ofKind(PartKind.PROBE).inOrder(ComponentQuery.Order.NEWEST));
    page(
        "nothing matches, newest",
        all.ofKind(PartKind.BARRIER).inOrder(ComponentQuery.Order.NEWEST));
    page("serial begins", all.withSerial("SN-00417"));
    page("serial begins, kind", all.withSerial("SN-00417").ofKind(PartKind.PROBE));
    page("any part of serial", all.withSerial("*4177"));
    page("any part of serial, nothing", all.withSerial("*QQ"));
    page("any part of serial, kind", all.withSerial("*4177").ofKind(PartKind.PROBE));
    time("lookup", () -> lookup("SN-00", null, null));
    time("lookup with hints", () -> lookup("SN-00", family, Length.ofMetres("4")));
    time("lookup, nothing typed, hints", () -> lookup("", family, Length.ofMetres("4")));
    time("lookup, nothing", () -> lookup("ZZ", family, Length.ofMetres("4")));
    time("find, begins", () -> database.read(sql -> search.holding(sql, "SN-004", 50)));
    time("find, inside", () -> database.read(sql -> search.holding(sql, "4177", 50)));
    time("find, nothing", () -> database.read(sql -> search.holding(sql, "QQQ", 50)));
    time("makers", () -> database.read(search::makers));
    told.forEach(System.out::println);
    assertThat(told).hasSizeGreaterThan(31);
  }

  private List<PartRow> lookup(String beginning, FamilyId wanted, Length length) {
    return database.read(sql -> search.lookup(sql, PartKind.CABLE, beginning, wanted, length));
  }

  /** First page, the one after it, and one deep in the list. */
  private void page(String name, ComponentQuery query) {
    PartsPage first = time(name, () -> database.read(sql -> search.page(sql, query, null)));
    if (first.later() != null) {
      time(name + ", next", () -> database.read(sql -> search.page(sql, query, first.later())));
      Cursor deep = new Cursor(false, "SN-4500000", PARTS / 2);
      Cursor deepBack = new Cursor(true, "SN-4500000", PARTS / 2);
      time(name + ", deep", () -> database.read(sql -> search.page(sql, query, deep)));
      time(name + ", deep back", () -> database.read(sql -> search.page(sql, query, deepBack)));
    }
  }

  private <R> R time(String name, Supplier<R> work) {
    long[] nanos = new long[7];
    R result = work.get();
    for (int i = 0; i < nanos.length; i++) {
      long from = System.nanoTime();
      result = work.get();
      nanos[i] = System.nanoTime() - from;
    }
    Arrays.sort(nanos);
    Object size = result instanceof PartsPage page ? page.rows().size() : ((List<?>) result).size();
    told.add(String.format("%-45s %8.1f ms  %3s rows", name, nanos[nanos.length / 2] / 1e6, size));
    return result;
  }
}
