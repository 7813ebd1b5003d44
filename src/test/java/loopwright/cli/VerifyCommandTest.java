package loopwright.cli;

import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import loopwright.db.Database;
import loopwright.db.Owner;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VerifyCommandTest {
  @TempDir private Path folder;
  private Place.Folder place;

  @BeforeEach
  void fill() {
    place = new Place.Folder(folder.resolve("data"));
    try (Database database = open()) {
      FullWorld.fill(database);
    }
  }

  private Database open() {
    return Database.open(place, new JournalStore(), new TestClock("2026-03-01T10:15:30Z"));
  }

  private CliRun verify(String... more) {
    String[] args = new String[3 + more.length];
    args[0] = "verify";
    args[1] = "--data";
    args[2] = place.shown();
    System.arraycopy(more, 0, args, 3, more.length);
    return CliRun.of(args);
  }

  private void rename() {
    try (Database database = open();
        Owner owner = new Owner(database)) {
      owner.secretly(sql -> sql.update(SITE).set(SITE.NAME, "Elsewhere").execute());
    }
  }

  @Test
  void whatAgreesEndsWithZero() {
    CliRun run = verify();
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(run.out()).startsWith("Agrees: 5 entries of 5 changes, ").contains("hash ");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void theFirstDisagreementIsNamedAndEndsWithOne() {
    rename();
    CliRun run = verify();
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out().strip())
        .isEqualTo(
            "Disagrees. site 1, column name: it holds \u201cElsewhere\u201d, entry 1 says"
                + " \u201cTest Marsh\u201d.");
  }

  @Test
  void theJsonIsOneDocument() throws IOException {
    JsonNode agrees = new ObjectMapper().readTree(verify("--json").out());
    assertThat(agrees.get("verdict").asText()).isEqualTo("agrees");
    assertThat(agrees.get("disagreement").isNull()).isTrue();
    assertThat(agrees.get("headHash").asText()).hasSize(64);
    rename();
    JsonNode found = new ObjectMapper().readTree(verify("--json").out()).get("disagreement");
    assertThat(found.get("table").asText()).isEqualTo("site");
    assertThat(found.get("key").asText()).isEqualTo("1");
    assertThat(found.get("column").asText()).isEqualTo("name");
    assertThat(found.get("entry").asLong()).isEqualTo(1);
  }

  @Test
  void aFolderWithoutADatabaseIsUnreadableAndStaysEmpty() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    CliRun run = CliRun.of("verify", "--data", other.toString());
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("There is no Loopwright database in");
    assertThat(other).isEmptyDirectory();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 100, 5_000})
  void aFileThatIsNoDatabaseIsUnreadable(int bytes) throws IOException {
    byte[] noise = new byte[bytes];
    new Random(bytes).nextBytes(noise);
    Files.write(place.file(), noise);
    CliRun run = verify();
    assertThat(run.exit()).as(run.err()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(Files.readAllBytes(place.file())).isEqualTo(noise);
  }

  /** Whatever part of the file goes bad: never an agreement about other content, never a trace. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void aDamagedFileIsSaidToBeSo(int seed) throws IOException {
    byte[] file = Files.readAllBytes(place.file());
    Random random = new Random(seed);
    int at = file.length / 8 * (seed - 1) + random.nextInt(file.length / 16);
    for (int i = at; i < Math.min(file.length, at + 600); i++) {
      file[i] = (byte) random.nextInt();
    }
    Files.write(place.file(), file);
    CliRun run = verify();
    assertThat(run.exit()).as(run.err()).isIn(Exit.GOOD, Exit.FOUND_SOMETHING, Exit.UNUSABLE);
    assertThat(run.err()).doesNotContain("\tat ");
  }
}
