package loopwright.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.calibration.Stage;
import loopwright.calibration.Zero;
import loopwright.loop.Slot;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.plant.PointKind;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The guide knows what the program knows, and its examples can be imported as they stand. */
class GuideTest {
  private static final Pattern EXAMPLE = Pattern.compile("```csv\\n(.*?)```", Pattern.DOTALL);

  private static String guide() throws IOException {
    return Files.readString(Path.of("src/docs/import-files.md"));
  }

  @ParameterizedTest
  @EnumSource(value = FileKind.class, names = "FAMILIES", mode = EnumSource.Mode.EXCLUDE)
  void describesEveryHeading(FileKind kind) throws IOException {
    String guide = guide();
    assertThat(kind.known()).allSatisfy(h -> assertThat(guide).contains("`" + h + "`"));
  }

  @Test
  void theHeadingsOfFamiliesAreThoseOfTheListForCheck() throws IOException {
    String guide = Files.readString(Path.of("src/docs/register-file.md"));
    assertThat(FileKind.FAMILIES.known())
        .allSatisfy(h -> assertThat(guide).contains("`" + h + "`"));
  }

  @Test
  void describesEveryWord() throws IOException {
    String guide = guide();
    Stream<String> words =
        Stream.of(
                Arrays.stream(PartKind.values()).map(PartKind::word),
                Arrays.stream(Evidence.values()).map(Evidence::word),
                Arrays.stream(PointKind.values()).map(PointKind::word),
                Arrays.stream(Stage.values()).map(Stage::word),
                Arrays.stream(Zero.values()).map(Zero::word),
                Stream.of(Slot.PROBE, Slot.PATH_1, Slot.PATH_6, Slot.DRIVER).map(Slot::word))
            .flatMap(all -> all);
    assertThat(words).allSatisfy(word -> assertThat(guide).contains("`" + word + "`"));
  }

  @Test
  void itsExamplesAreOneGoodImport() throws IOException {
    List<String> files = new ArrayList<>();
    Matcher examples = EXAMPLE.matcher(guide());
    while (examples.find()) {
      files.add("example-" + files.size() / 2 + ".csv");
      files.add(examples.group(1));
    }
    assertThat(files).hasSize(2 * FileKind.values().length);
    try (ImportWorld world = new ImportWorld(Engine.H2, new TestClock("2026-11-25T09:00:00Z"))) {
      ImportPlan plan = world.plan(files.toArray(String[]::new));
      assertThat(plan.problems()).isEmpty();
      assertThat(plan.files())
          .extracting(ImportPlan.PlannedFile::holds)
          .containsExactlyElementsOf(Arrays.stream(FileKind.values()).map(FileKind::word).toList());
      assertThat(world.run(plan).counts().added()).isEqualTo(plan.rows().size());
    }
  }
}
