package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples that the guide prints do what it says. */
class RegisterFileGuideTest {
  private static final Pattern EXAMPLE = Pattern.compile("```csv\n(.*?)```", Pattern.DOTALL);

  @TempDir private Path folder;

  @Test
  void theExamplesRun() throws IOException {
    Matcher example = EXAMPLE.matcher(Files.readString(Path.of("src/docs/register-file.md")));
    List<String> blocks = example.results().map(found -> found.group(1)).toList();
    assertThat(blocks).hasSize(2);
    Path shop = Files.writeString(folder.resolve("shop.csv"), blocks.get(0));
    Path families = Files.writeString(folder.resolve("families.csv"), blocks.get(1));
    CliRun run = CliRun.of("check", shop.toString(), "--families", families.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out())
        .contains("refused     K301-VY1  length balance: 0.5 m (1.6 ft) too long")
        .contains("3 loops: 1 refused, 0 unknown, 0 attention, 2 matches.");
  }
}
