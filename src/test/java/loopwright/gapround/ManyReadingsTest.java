package loopwright.gapround;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import loopwright.App;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/**
 * Rounds of a plant of 100,000 points, as text and as a workbook, into a database on disk. Time and
 * memory are told, not asserted: they belong to the machine.
 */
@Tag("long")
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ManyReadingsTest {
  private static final int POINTS = Integer.getInteger("loopwright.points", 100_000);
  private static final Act ACT = Act.ofProgram("test", "many readings");
  private static final TestClock CLOCK = new TestClock("2026-03-01T10:15:30Z");

  @TempDir static Path folder;

  @BeforeAll
  static void fill() {
    try (Database database =
        Database.open(new Place.Folder(folder.resolve("data")), new JournalStore(), CLOCK)) {
      database.write(
          ACT,
          tx -> {
            long machine = RawWorld.machine(tx, "K-1");
            tx.sql()
                .execute(
                    "INSERT INTO point (machine_id, tag, tag_key, kind, pair_tag, change_id)"
                        + " SELECT ?, 'V-' || x, 'V-' || x, 'radial vibration',"
                        + " 'V-' || (x + CASE WHEN MOD(x, 2) = 1 THEN 1 ELSE -1 END), ?"
                        + " FROM SYSTEM_RANGE(1, ?)",
                    machine,
                    tx.changeId(),
                    POINTS);
            return machine;
          });
    }
  }

  private static String volts(int i, boolean later) {
    double moved = later && i % 1000 == 0 ? 1.5 : 0;
    return String.format(Locale.ROOT, "%.2f", -9.5 - i % 100 / 100.0 + moved);
  }

  private static String bring(String name, Path file) {
    List<MemoryPoolMXBean> heap =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .toList();
    System.gc();
    heap.forEach(MemoryPoolMXBean::resetPeakUsage);
    long cpu = cpu();
    long began = System.nanoTime();
    try (App app = App.openExisting(new Place.Folder(folder.resolve("data")), CLOCK)) {
      GapRounds.Brought brought =
          app.gapRounds().bring(new GapRounds.Given(name, file, TappingPoint.RACK, "T"), ACT);
      assertThat(brought.complaints().kept()).isEmpty();
      long kept = System.nanoTime();
      long keptCpu = cpu();
      List<String> report = app.gapRounds().report(brought.round(), 5);
      System.out.printf(
          Locale.ROOT,
          "%s, %d rows, %.1f MB: brought in in %.1f s (%.1f s of processor), ranked in %.1f s (%.1f s),"
              + " peak heap %d MB%n",
          name,
          POINTS,
          file.toFile().length() / 1e6,
          (kept - began) / 1e9,
          (keptCpu - cpu) / 1e9,
          (System.nanoTime() - kept) / 1e9,
          (cpu() - keptCpu) / 1e9,
          heap.stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() >> 20);
      return String.join("\n", report);
    }
  }

  private static long cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  @Test
  @Order(1)
  void asText() throws IOException {
    Path file = folder.resolve("january.csv");
    try (BufferedWriter out = Files.newBufferedWriter(file, UTF_8)) {
      out.write("tag;volts;time;machine_state\n");
      for (int i = 1; i <= POINTS; i++) {
        out.write("V-" + i + ";" + volts(i, false) + ";2026-01-20 08:00;rest\n");
      }
    }
    assertThat(bring("january.csv", file))
        .contains(POINTS + " rows, " + POINTS + " new", "0 loops are worth a visit.");
  }

  @Test
  @Order(2)
  void asAWorkbook() throws IOException {
    Path file = folder.resolve("february.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "test", "1.0")) {
      Worksheet sheet = book.newWorksheet("round");
      String[] headings = {"tag", "volts", "time", "machine_state"};
      for (int i = 0; i < headings.length; i++) {
        sheet.value(0, i, headings[i]);
      }
      for (int i = 1; i <= POINTS; i++) {
        sheet.value(i, 0, "V-" + i);
        sheet.value(i, 1, Double.valueOf(volts(i, true)));
        sheet.value(i, 2, "2026-02-20 08:00");
        sheet.value(i, 3, "rest");
      }
    }
    assertThat(bring("february.xlsx", file))
        .contains(POINTS / 1000 + " loops are worth a visit.")
        .contains("V-1000: −8.00 V at rest, was −9.50 V: +1.50 V, as if nearer.");
  }

  @Test
  @Order(3)
  void theSameAgainKeepsNothingTwice() {
    assertThat(bring("again.csv", folder.resolve("january.csv")))
        .contains("0 new, " + POINTS + " kept already");
  }
}
