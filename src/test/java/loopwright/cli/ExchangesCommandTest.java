package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExchangesCommandTest {
  @TempDir static Path folder;

  @BeforeAll
  static void fill() {
    Place place = new Place.Folder(folder.resolve("data"));
    try (App app = App.open(place, Installation.Purpose.DEMO, InstantSource.system())) {
      app.fillDemo(() -> {});
    }
  }

  private static CliRun run(String... more) {
    String[] args = new String[3 + more.length];
    args[0] = "exchanges";
    args[1] = "--data";
    args[2] = folder.resolve("data").toString();
    System.arraycopy(more, 0, args, 3, more.length);
    return CliRun.of(args);
  }

  @Test
  void linesNameTheSwapAndItsSteps() {
    CliRun run = run();
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out())
        .startsWith("6 loops are out of balance. Exchanges put 4 right, stock makes 2 whole")
        .contains("Exchange: swap the extension cables of K101-V3X and K101-V3Y.")
        .contains("1. Look: are the parts swapped, or only the records?")
        .contains("From stock: K601-V5Y is");
  }

  @Test
  void oneTrainWithNothingToDoIsGood() {
    CliRun run = run("--train", "X-701");
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(run.out())
        .isEqualToIgnoringNewLines("Every loop whose lengths are known is in balance.");
  }

  @Test
  void jsonIsOneDocument() {
    assertThat(run("--json").out()).contains("\"putRight\" : 4").contains("\"fromStock\"");
  }

  @Test
  void aTrainThatIsNotThereIsRefused() {
    CliRun run = run("--train", "nowhere");
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("There is no train nowhere");
  }

  @Test
  void aFolderWithoutDataIsRefused() {
    CliRun run = CliRun.of("exchanges", "--data", folder.resolve("none").toString());
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(folder.resolve("none")).doesNotExist();
  }
}
