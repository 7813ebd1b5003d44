package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CliTest {

  @Test
  void helpGoesToStandardOutput() {
    CliRun run = CliRun.of("--help");
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(run.out()).contains("Usage: loopwright");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void theVersionIsPrinted() {
    assertThat(CliRun.of("--version").out()).startsWith("loopwright ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "nonsense", "--nonsense"})
  void aWrongCallIsUnusableAndSaysSoOnStandardError(String call) {
    CliRun run = call.isEmpty() ? CliRun.of() : CliRun.of(call);
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("loopwright");
  }
}
