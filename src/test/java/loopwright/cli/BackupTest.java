package loopwright.cli;

import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Act;
import loopwright.db.Backup;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.db.Tx;
import loopwright.db.gen.DefaultSchema;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.journal.JournalStore;
import loopwright.people.Account;
import loopwright.people.Login;
import loopwright.people.People;
import loopwright.people.Person;
import loopwright.problem.Refused;
import loopwright.testing.ChildJvm;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import loopwright.web.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rehearses a whole loss: fill, back up, restore on an empty folder, look at everything. */
class BackupTest {
  private static final TestClock CLOCK = new TestClock("2026-03-01T10:15:30Z");
  private static final String PASSWORD = "five small grey pebbles";

  @TempDir private Path root;
  private Path data;
  private Path file;

  @BeforeEach
  void fill() throws IOException {
    data = root.resolve("data");
    file = root.resolve("backup.zip");
    try (Database database = open(data)) {
      Installation.claim(database, Installation.Purpose.SITE, CLOCK);
      FullWorld.fill(database);
      People people = new People(database);
      Person by = people.person(1).orElseThrow();
      people.add(
          by,
          new Login("t.miller"),
          new Account("T. Miller", Role.TECHNICIAN, true),
          PASSWORD,
          "joined");
    }
    Path attachments = Files.createDirectories(data.resolve("attachments/2026"));
    Files.writeString(attachments.resolve("certificate 7 \u00fc.pdf"), "not really a PDF");
    Files.write(attachments.resolveSibling("large.bin"), new byte[3_000_000]);
  }

  private static Database open(Path folder) {
    return Database.open(new Place.Folder(folder), new JournalStore(), CLOCK);
  }

  private CliRun backup() {
    return CliRun.of("backup", "--data", data.toString(), "--to", file.toString());
  }

  private CliRun restore(Path target) {
    return CliRun.of("restore", "--from", file.toString(), "--data", target.toString());
  }

  private static Map<String, String> rows(Path folder) {
    try (Database database = open(folder)) {
      return database.read(
          sql ->
              DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
                  .collect(
                      Collectors.toMap(
                          table -> table.getName(),
                          table ->
                              sql.selectFrom(table)
                                  .orderBy(table.getPrimaryKey().getFields())
                                  .fetch()
                                  .formatCSV())));
    }
  }

  @Test
  void everythingComesBack() throws IOException {
    CliRun backup = backup();
    assertThat(backup.exit()).as(backup.err()).isEqualTo(Exit.GOOD);
    assertThat(backup.out()).contains("journal up to entry 6");
    Path target = root.resolve("restored");
    CliRun restore = restore(target);
    assertThat(restore.exit()).as(restore.err()).isEqualTo(Exit.GOOD);
    assertThat(restore.out()).contains("Journal and tables agree");
    assertThat(hash(restore)).isEqualTo(hash(backup));
    assertThat(CliRun.of("verify", "--data", target.toString()).exit()).isEqualTo(Exit.GOOD);
    assertThat(rows(target)).isEqualTo(rows(data));
    assertThat(files(target)).isEqualTo(files(data)).hasSize(2);
    signsInAndGoesOn(target);
  }

  private static String hash(CliRun run) {
    return run.out().substring(run.out().indexOf("Hash of that entry: "));
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Path attachments = folder.resolve("attachments");
    try (Stream<Path> all = Files.walk(attachments)) {
      return all.filter(Files::isRegularFile)
          .collect(
              Collectors.toMap(
                  each -> attachments.relativize(each).toString(), BackupTest::content));
    }
  }

  private static String content(Path file) {
    try {
      return new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
    } catch (IOException unreadable) {
      throw new java.io.UncheckedIOException(unreadable);
    }
  }

  /** Numbers go on after the last one used, and the journal goes on. */
  private static void signsInAndGoesOn(Path folder) {
    try (Database database = open(folder)) {
      assertThat(new People(database).authenticate("t.miller", PASSWORD)).isPresent();
      SiteRecord site = database.write(act(), tx -> site(tx, "NEW"));
      assertThat(site.getId()).isEqualTo(2);
    }
    assertThat(CliRun.of("verify", "--data", folder.toString()).out())
        .startsWith("Agrees: 7 entries");
  }

  private static Act act() {
    return new Act(null, "A. Tester", "engineer", "try", "to see");
  }

  private static SiteRecord site(Tx tx, String code) {
    SiteRecord site = tx.row(SITE);
    site.setCode(code);
    site.setName("Site " + code);
    site.setZone("UTC");
    return tx.insert(site);
  }

  @Test
  void aBackupOverwritesNothingAndLeavesNothingHalfDone() throws IOException {
    Files.writeString(file, "precious");
    CliRun run = backup();
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("exists already");
    assertThat(file).hasContent("precious");
    file = root.resolve("no such folder").resolve("backup.zip");
    assertThat(backup().err()).contains("There is no folder");
    try (Stream<Path> inside = Files.list(root)) {
      assertThat(inside.map(each -> each.getFileName().toString()))
          .containsExactlyInAnyOrder("data", "backup.zip");
    }
  }

  @Test
  void aFolderThatIsNotEmptyIsNotRestoredInto() throws IOException {
    backup();
    Path target = Files.createDirectory(root.resolve("full"));
    Files.writeString(target.resolve("note.txt"), "mine");
    CliRun run = restore(target);
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("is not empty");
    assertThat(target.resolve("note.txt")).hasContent("mine");
    assertThat(restore(data).err()).contains("is not empty");
    assertThat(rows(data)).isNotEmpty();
  }

  @Test
  void anEmptyFolderIsFilled() throws IOException {
    backup();
    Path target = Files.createDirectory(root.resolve("empty"));
    assertThat(restore(target).exit()).isEqualTo(Exit.GOOD);
    try (Stream<Path> inside = Files.list(target)) {
      assertThat(inside.map(each -> each.getFileName().toString()))
          .containsExactlyInAnyOrder("attachments", "engine.properties", "loopwright.mv.db");
    }
  }

  @Test
  void aRunningDatabaseIsBackedUpAsOfOneMoment() throws Exception {
    AtomicBoolean enough = new AtomicBoolean();
    AtomicInteger number = new AtomicInteger();
    Map<Path, Long> taken = new LinkedHashMap<>();
    try (Database database = open(data)) {
      ExecutorService threads = Executors.newFixedThreadPool(2);
      Future<?> writing =
          threads.submit(
              () -> {
                while (!enough.get()) {
                  database.write(act(), tx -> site(tx, "W" + number.incrementAndGet()));
                  Thread.sleep(10); // what is written must also be restored
                }
                return number.get();
              });
      for (int i = 0; i < 3; i++) {
        file = root.resolve("running" + i + ".zip");
        taken.put(file, Backup.take(database, file, CLOCK).entries());
      }
      enough.set(true);
      writing.get();
      threads.shutdown();
    }
    for (Map.Entry<Path, Long> backup : taken.entrySet()) {
      file = backup.getKey();
      CliRun run = restore(root.resolve("restored").resolve(file.getFileName()));
      assertThat(run.exit()).as(run.err()).isEqualTo(Exit.GOOD);
      assertThat(run.out()).contains("journal up to entry " + backup.getValue() + ",");
    }
    assertThat(number.get()).isPositive();
  }

  @Test
  void aServersDatabaseIsLeftToTheServer() {
    try (Database database = Engine.POSTGRESQL.open(CLOCK)) {
      assertThatThrownBy(() -> Backup.take(database, file, CLOCK))
          .isInstanceOfSatisfying(
              Refused.class,
              refused -> assertThat(refused.problem()).isEqualTo(DbProblem.SERVERS_OWN));
    }
    assertThat(file).doesNotExist();
  }

  /** Runs in a process of its own. */
  static final class Holder {
    public static void main(String[] args) throws InterruptedException {
      try (Database database = open(Path.of(args[0]))) {
        System.out.println("open " + database.place().shown());
        Thread.sleep(600_000);
      }
    }
  }

  @Test
  void aFolderThatAnotherProcessHasOpenIsRefused() {
    try (ChildJvm holder = new ChildJvm(Holder.class, data.toString())) {
      assertThat(holder.line()).startsWith("open");
      for (CliRun run : new CliRun[] {backup(), CliRun.of("verify", "--data", data.toString())}) {
        assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
        assertThat(run.err()).contains("is in use by another Loopwright");
      }
    }
    assertThat(file).doesNotExist();
    assertThat(CliRun.of("verify", "--data", data.toString()).exit()).isEqualTo(Exit.GOOD);
  }

  @Test
  void aFileOfAnotherEngineIsRefusedUntouched() throws IOException {
    Files.writeString(data.resolve("engine.properties"), "engine=2.1.214 (2022-06-13)\n");
    Path database = new Place.Folder(data).file();
    byte[] before = Files.readAllBytes(database);
    for (CliRun run : new CliRun[] {backup(), CliRun.of("verify", "--data", data.toString())}) {
      assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
      assertThat(run.err()).contains("was written by engine 2.1.214").contains("restore");
    }
    assertThat(Files.readAllBytes(database)).isEqualTo(before);
  }

  @Test
  void theManifestSaysWhatItIs() throws IOException {
    backup();
    String manifest = new BackupForge(file).text("manifest.json");
    assertThat(manifest)
        .contains("\"purpose\" : \"site\"")
        .contains("\"site\" : 1")
        .contains("\"calibration_reading\" : 5")
        .contains("\"seq\" : 6");
    assertThat(Instant.parse(manifest.replaceAll("(?s).*\"createdAt\" : \"([^\"]+)\".*", "$1")))
        .isAfter(Instant.EPOCH);
  }
}
