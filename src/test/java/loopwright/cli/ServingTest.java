package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.problem.Refused;
import loopwright.web.WebSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What {@code serve} and {@code demo} are told about where they listen and where labels lead. */
class ServingTest {
  private static Serving of(String... arguments) {
    return CommandLine.populateCommand(new Serving(), arguments);
  }

  @Test
  void theKeystoresPasswordComesFromTheFirstLineOfAFile(@TempDir Path folder) throws IOException {
    Path password = Files.writeString(folder.resolve("password"), "s3cret of keys\nsecond line\n");
    WebSettings settings =
        of("--keystore", "keys.p12", "--keystore-password-file", password.toString()).settings();
    assertThat(settings.keystore().orElseThrow().password()).isEqualTo("s3cret of keys");
    assertThat(settings.toString()).doesNotContain("s3cret");
    assertThatThrownBy(
            () ->
                of("--keystore", "keys.p12", "--keystore-password-file", folder + "/none")
                    .settings())
        .isInstanceOf(Refused.class)
        .hasMessageContaining("can't be read as the file with the keystore's password");
  }

  @Test
  void theStartSaysWhereLabelsLeadOrThatNoneCanBePrinted() {
    assertThat(Serving.told(of("--base-address", "https://loops.example/").labels(false)))
        .isEqualTo("Labels lead to https://loops.example/c/…");
    assertThat(Serving.told(of().labels(false)))
        .isEqualTo("No --base-address is given: labels can't be printed until it is.");
    assertThat(Serving.told(of().labels(true))).contains("whatever address you open");
    assertThat(
            of("--former-address", "http://a.example", "--former-address", "http://b.example")
                .labels(false)
                .former())
        .containsExactly("http://a.example", "http://b.example");
  }

  @Test
  void aBaseAddressThatCannotBeIsRefusedBeforeAnythingIsOpened(@TempDir Path folder) {
    Path data = folder.resolve("data");
    CliRun run = CliRun.of("serve", "--data", data.toString(), "--base-address", "loops.example");
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("loops.example", "https://");
    assertThat(data).doesNotExist();
  }
}
