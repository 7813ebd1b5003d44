package loopwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The files in {@code demo-data/} are exactly what the generator makes. To make them anew after a
 * change of the scenario, run this test once with {@code -Dloopwright.writeDemo=true}.
 */
class DemoDataTest {
  private static final Path FOLDER = Path.of("demo-data");
  private static final List<String> WRITTEN_BY_HAND = List.of("README.md", "demo.properties");

  @Test
  void theFilesAreWhatTheGeneratorMakes() throws IOException {
    Map<String, String> files = DemoFiles.of(DemoScenario.played());
    if (Boolean.getBoolean("loopwright.writeDemo")) {
      files.forEach(DemoDataTest::write);
    }
    for (Map.Entry<String, String> file : files.entrySet()) {
      assertThat(Files.readString(FOLDER.resolve(file.getKey())))
          .as(file.getKey())
          .isEqualTo(file.getValue());
    }
    assertThat(present()).containsExactlyElementsOf(new TreeSet<>(files.keySet()));
  }

  private static TreeSet<String> present() throws IOException {
    try (Stream<Path> found = Files.walk(FOLDER)) {
      TreeSet<String> names = new TreeSet<>();
      found
          .filter(Files::isRegularFile)
          .map(path -> FOLDER.relativize(path).toString().replace('\\', '/'))
          .filter(name -> !WRITTEN_BY_HAND.contains(name))
          .forEach(names::add);
      return names;
    }
  }

  private static void write(String name, String text) {
    try {
      Path file = FOLDER.resolve(name);
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
