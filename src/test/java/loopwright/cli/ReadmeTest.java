package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What README tells a newcomer to type is what the program takes. */
class ReadmeTest {
  private static final String JAR = "java -jar target/loopwright.jar ";

  private static List<String> lines() throws IOException {
    return Files.readAllLines(Path.of("README.md"));
  }

  static Stream<String> withoutADatabase() throws IOException {
    return lines().stream()
        .filter(line -> line.startsWith(JAR))
        .map(line -> line.substring(JAR.length()))
        .filter(line -> !line.startsWith("serve") && !line.startsWith("demo"));
  }

  @ParameterizedTest
  @MethodSource("withoutADatabase")
  void anExampleFindsTheFaultsOfTheDemoData(String line) {
    CliRun run = CliRun.of(line.strip().split("\\s+"));
    assertThat(run.exit())
        .as(run.err())
        .isEqualTo(line.startsWith("cause ") ? Exit.GOOD : Exit.FOUND_SOMETHING);
    assertThat(run.out()).isNotBlank();
    assertThat(run.err()).isEmpty();
  }

  @Test
  void theExamplesAreThere() throws IOException {
    assertThat(withoutADatabase().map(line -> line.split(" ")[0]))
        .contains("check", "analyse", "cause");
  }

  @Test
  void theExampleOfACauseSaysWhatReadmeSays() throws IOException {
    String line = withoutADatabase().filter(l -> l.startsWith("cause ")).findFirst().orElseThrow();
    assertThat(CliRun.of(line.split("\\s+")).out())
        .startsWith("Likeliest: over length, 5.5 m fitted, probe moved afterwards");
  }

  @Test
  void everyCommandIsNamed() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    List<String> commands =
        Stream.of(Cli.class.getAnnotation(CommandLine.Command.class).subcommands())
            .filter(type -> type != CommandLine.HelpCommand.class)
            .map(type -> type.getAnnotation(CommandLine.Command.class).name())
            .toList();
    assertThat(commands)
        .isNotEmpty()
        .allSatisfy(
            name -> assertThat(readme).containsPattern("\\b" + Pattern.quote(name) + "\\b"));
  }

  @Test
  void theJarIsBuiltUnderTheNameThatIsTyped() throws IOException {
    assertThat(Files.readString(Path.of("pom.xml"))).contains("<finalName>loopwright</finalName>");
    assertThat(lines())
        .contains("mvn -q -B -DskipTests package && java -jar target/loopwright.jar demo");
  }
}
