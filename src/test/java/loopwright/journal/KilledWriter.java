package loopwright.journal;

import static loopwright.db.gen.Tables.SITE;

import java.nio.file.Path;
import java.util.stream.IntStream;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.testing.TestClock;

/**
 * Runs in a process of its own: writes changes from several threads for ever and prints the code of
 * each site once its change is acknowledged. Arguments: folder, number of threads, prefix.
 */
final class KilledWriter {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "add", "to be killed");

  private KilledWriter() {}

  public static void main(String[] args) {
    Database database =
        Database.open(
            new Place.Folder(Path.of(args[0])),
            new JournalStore(),
            new TestClock("2026-03-01T10:15:30Z"));
    System.out.println("open");
    for (int thread = 0; thread < Integer.parseInt(args[1]); thread++) {
      String prefix = args[2] + thread + "-";
      new Thread(() -> IntStream.iterate(0, i -> i + 1).forEach(i -> add(database, prefix + i)))
          .start();
    }
  }

  private static void add(Database database, String code) {
    database.write(ACT, tx -> site(tx, code));
    System.out.println(code);
  }

  private static SiteRecord site(Tx tx, String code) {
    SiteRecord site = tx.row(SITE);
    site.setCode(code);
    site.setName("Site " + code);
    site.setZone("UTC");
    return tx.insert(site);
  }
}
