package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is wrong with a backup is said, and nothing of it stays behind. */
class BrokenBackupTest {
  @TempDir private static Path root;
  private static Path good;

  @BeforeAll
  static void backUp() throws IOException {
    Path data = root.resolve("data");
    try (Database database =
        Database.open(
            new Place.Folder(data), new JournalStore(), new TestClock("2026-03-01T10:15:30Z"))) {
      FullWorld.fill(database);
    }
    Files.createDirectories(data.resolve("attachments"));
    Files.writeString(data.resolve("attachments/a.txt"), "attached");
    good = root.resolve("good.zip");
    CliRun run = CliRun.of("backup", "--data", data.toString(), "--to", good.toString());
    assertThat(run.exit()).as(run.err()).isEqualTo(Exit.GOOD);
  }

  private static void assertRefused(Path broken, String... says) throws IOException {
    Path target = root.resolve("target");
    CliRun run = CliRun.of("restore", "--from", broken.toString(), "--data", target.toString());
    assertThat(run.exit()).as(run.err()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(says).doesNotContain("\tat ");
    assertThat(target).doesNotExist();
    Files.createDirectory(target);
    CliRun again = CliRun.of("restore", "--from", broken.toString(), "--data", target.toString());
    assertThat(again.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(target).isEmptyDirectory();
    Files.delete(target);
  }

  @TestFactory
  Stream<DynamicTest> aFileThatIsNoBackup() {
    return Stream.of(
        noBackup("nothing", ""),
        noBackup("a table", "tag,family\nT100-VX1,q8\n"),
        noBackup("only the beginning of a zip", "PK\u0003\u0004"));
  }

  private static DynamicTest noBackup(String name, String content) {
    return DynamicTest.dynamicTest(
        name,
        () -> {
          Path file = root.resolve("no-backup.zip");
          Files.writeString(file, content);
          assertRefused(file, "is not a backup that can be restored");
        });
  }

  @Test
  void aFileThatIsNotThere() throws IOException {
    assertRefused(root.resolve("nowhere.zip"), "there is no such file");
    assertRefused(root, "there is no such file");
  }

  @TestFactory
  Stream<DynamicTest> aBackupCutShort() {
    return IntStream.rangeClosed(1, 6)
        .mapToObj(
            sixth ->
                DynamicTest.dynamicTest(
                    sixth + "/7 of it",
                    () -> {
                      byte[] bytes = Files.readAllBytes(good);
                      Path file = root.resolve("short.zip");
                      Files.write(file, Arrays.copyOf(bytes, bytes.length * sixth / 7));
                      assertRefused(file, "is not a backup that can be restored");
                    }));
  }

  /** A flipped bit is found, or it was where nothing of the content stands. */
  @TestFactory
  Stream<DynamicTest> aBackupWithAFlippedBit() {
    Random random = new Random(20260301);
    return IntStream.range(0, 10)
        .mapToObj(i -> DynamicTest.dynamicTest("try " + i, () -> flip(random)));
  }

  private static void flip(Random random) throws IOException {
    byte[] bytes = Files.readAllBytes(good);
    bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    Path file = root.resolve("flipped.zip");
    Files.write(file, bytes);
    Path target = root.resolve("flipped-" + random.nextInt(1_000_000));
    CliRun run = CliRun.of("restore", "--from", file.toString(), "--data", target.toString());
    assertThat(run.exit()).as(run.err()).isIn(Exit.GOOD, Exit.UNUSABLE);
    if (run.exit() == Exit.GOOD) {
      assertThat(CliRun.of("verify", "--data", target.toString()).exit()).isEqualTo(Exit.GOOD);
    } else {
      assertThat(target).doesNotExist();
    }
  }

  private static DynamicTest forged(
      String name, UnaryOperator<BackupForge> forging, String... says) {
    return DynamicTest.dynamicTest(
        name,
        () -> {
          Path file = root.resolve("forged.zip");
          forging.apply(new BackupForge(good)).write(file);
          assertRefused(file, says);
        });
  }

  private static UnaryOperator<String> replacing(String old, String fresh) {
    return text -> text.replaceFirst(old, fresh);
  }

  private static UnaryOperator<BackupForge> script(String old, String fresh) {
    return backup -> backup.change("script.sql", replacing(old, fresh)).sumUp();
  }

  private static UnaryOperator<BackupForge> manifest(String old, String fresh) {
    return backup -> backup.change("manifest.json", replacing(old, fresh));
  }

  @TestFactory
  Stream<DynamicTest> aBackupThatDoesNotHoldWhatItsManifestSays() {
    return Stream.of(
        forged(
            "no manifest", backup -> backup.remove("manifest.json"), "it holds no manifest.json"),
        forged("no script", backup -> backup.remove("script.sql"), "it lacks script.sql"),
        forged(
            "no attachment", backup -> backup.remove("attachments/a.txt"), "it lacks attachments"),
        forged("one file more", backup -> backup.add("extra.txt", "?"), "extra.txt"),
        forged(
            "a name that climbs",
            backup -> backup.add("attachments/../../climbed", "?"),
            "climbed"),
        forged(
            "a manifest whose names climb",
            backup ->
                manifest("attachments/a.txt", "attachments/../../a.txt")
                    .apply(
                        backup
                            .remove("attachments/a.txt")
                            .add("attachments/../../a.txt", "attached")),
            "its manifest names",
            "../../a.txt"),
        forged(
            "other attachment",
            backup -> backup.change("attachments/a.txt", replacing("attached", "detached")),
            "attachments/a.txt is not what its manifest says"),
        forged(
            "shorter script",
            backup -> backup.change("script.sql", text -> text.substring(0, text.length() / 2)),
            "script.sql is not what its manifest says"),
        forged("unknown format", manifest("\"format\" : \"1\"", "\"format\" : \"9\""), "format 9"),
        forged("no JSON", manifest("\\{", ""), "is not a backup"),
        forged("gaps", manifest("\"sha256\"", "\"sha255\""), "is not a backup"),
        forged(
            "other count",
            manifest("\"site\" : 1", "\"site\" : 2"),
            "counts 2 rows of site",
            "makes 1"),
        forged("other head", manifest("\"seq\" : 5", "\"seq\" : 4"), "its journal does not end as"),
        forged(
            "a table more",
            manifest("\"site\" : 1", "\"site\" : 1, \"moon\" : 1"),
            "rows of moon"));
  }

  @TestFactory
  Stream<DynamicTest> aScriptThatWasChangedThoughItsSumFits() {
    String other = "is none that a backup consists of";
    return Stream.of(
        forged(
            "other content",
            script("Test Marsh", "Test Moors"),
            "what it holds disagrees: site 1, column name"),
        forged(
            "half a statement",
            script("(?s)(INSERT INTO \"PUBLIC\".\"SITE\" VALUES).*", "$1 (1,"),
            "of its script fails"),
        forged(
            "an alias",
            script("(?s)\\z", "\nCREATE ALIAS X FOR \"java.lang.System.exit\";"),
            other),
        forged(
            "a trigger",
            script("(?s)\\z", "\nCREATE TRIGGER T BEFORE INSERT ON site CALL \"X\";"),
            other),
        forged("a drop", script("(?s)\\z", "\nDROP TABLE site;"), other),
        forged("a file read", script("'Test Marsh'", "FILE_READ('/etc/hostname')"), other),
        forged(
            "a file read in quotes",
            script("'Test Marsh'", "\"FILE_READ\"('/etc/hostname')"),
            other),
        forged(
            "a hidden file read",
            script("'Test Marsh'", "\\$\\$'\\$\\$ || FILE_READ('/etc/hostname')"),
            other),
        forged("a query", script("'Test Marsh'", "(SELECT MAX(login) FROM person)"), other));
  }
}
