package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** Rounds of the invented plant's points from the command line. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class GapRoundCommandTest {
  private static final String HEAD = "tag,volts,time,machine_state\n";

  @TempDir static Path folder;

  @BeforeAll
  static void points() {
    CliRun run =
        CliRun.of("import", "demo-data/families.csv", "demo-data/points.csv", "--data", data());
    assertThat(run.exit()).as(run.out() + run.err()).isEqualTo(Exit.GOOD);
  }

  private static String data() {
    return folder.resolve("data").toString();
  }

  private static CliRun round(String name, String rows, String... more) throws IOException {
    Path file = Files.writeString(folder.resolve(name), HEAD + rows);
    String[] args = new String[more.length + 4];
    args[0] = "gap-round";
    args[1] = file.toString();
    args[2] = "--data";
    args[3] = data();
    System.arraycopy(more, 0, args, 4, more.length);
    return CliRun.of(args);
  }

  @Test
  @Order(1)
  void aRowThatCannotBeMeantIsNamedAndNothingIsWritten() throws IOException {
    CliRun run = round("bad.csv", "K101-A1,-10.0,2026-02-01 08:00,\n");
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out())
        .contains("bad.csv, row 2, column machine_state: the machine state is missing")
        .contains("Nothing was written.");
    assertThat(round("lost.csv", "NOBODY,-10.0,2026-02-01 08:00,rest\n").exit())
        .isEqualTo(Exit.UNUSABLE);
    assertThat(
            round("x.csv", "K101-A1,-10.0,2026-02-01 08:00,rest\n", "--measured-at", "moon").err())
        .contains("no place to measure");
  }

  @Test
  @Order(2)
  void theSecondRoundRanksWhatChanged() throws IOException {
    CliRun first =
        round(
            "january.csv",
            "K101-A1,-10.0,2026-01-10 08:00,rest\nK101-A2,-10.0,2026-01-10 08:00,rest\n"
                + "LOST-1,-9.0,2026-01-10 08:00,rest\n");
    assertThat(first.exit()).as(first.err()).isEqualTo(Exit.GOOD);
    assertThat(first.out())
        .contains("3 rows, 2 new", "Unmatched tags: LOST-1", "0 loops are worth a visit.");
    CliRun second =
        round(
            "february.csv",
            "K101-A1,-8.5,2026-02-10 08:00,rest\nK101-A2,-9.8,2026-02-10 08:00,rest\n");
    assertThat(second.out())
        .contains("1 loops are worth a visit.")
        .contains("K101-A1: −8.50 V at rest, was −10.00 V: +1.50 V, as if nearer");
  }
}
