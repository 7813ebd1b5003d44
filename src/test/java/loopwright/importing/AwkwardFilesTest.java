package loopwright.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.sheet.Complaint;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Files as shops send them, one a trap, in {@code src/test/resources/imports}. */
@Tag("zone")
class AwkwardFilesTest {
  private static final Path FOLDER = Path.of("src/test/resources/imports");
  private static final List<String> BASE =
      List.of("base-families.csv", "base-components.csv", "base-points.csv", "base-placements.csv");

  private static ImportWorld world;

  @BeforeAll
  static void fill() throws IOException {
    world = new ImportWorld(Engine.H2, new TestClock("2026-11-25T09:00:00Z"));
    ImportPlan plan =
        world.importing.plan(
            BASE.stream().map(name -> ImportFile.of(FOLDER.resolve(name))).toList(),
            Optional.empty());
    assertThat(plan.problems()).isEmpty();
    world.run(plan);
  }

  @AfterAll
  static void close() {
    world.close();
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "/imports/expected.csv",
      useHeadersInDisplayName = false,
      numLinesToSkip = 2)
  void isPlannedAsItIsMeant(
      String file,
      int added,
      int changed,
      int unchanged,
      int refused,
      String unusable,
      String problems) {
    long head = world.head();
    ImportPlan plan =
        world.importing.plan(List.of(ImportFile.of(FOLDER.resolve(file))), Optional.empty());
    assertThat(plan.problems().stream().map(AwkwardFilesTest::told).toList())
        .isEqualTo(problems == null ? List.of() : Arrays.stream(problems.split(" ")).toList());
    assertThat(plan.counts()).isEqualTo(new RowCounts(added, changed, unchanged, refused));
    assertThat(plan.unusable()).isEqualTo("yes".equals(unusable));
    assertThat(plan.isGood()).isEqualTo(problems == null);
    assertThat(world.head()).as("a plan writes nothing").isEqualTo(head);
    assertThat(plan.problems()).allMatch(complaint -> complaint.file().equals(file));
  }

  private static String told(Complaint complaint) {
    return complaint.row() + ":" + complaint.column() + ":" + complaint.code();
  }

  @Test
  void everyFileIsTried() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER);
        Stream<String> lines = Files.lines(FOLDER.resolve("expected.csv"))) {
      TreeSet<String> present =
          files
              .map(path -> path.getFileName().toString())
              .filter(name -> !name.startsWith("base-") && !name.equals("expected.csv"))
              .collect(Collectors.toCollection(TreeSet::new));
      TreeSet<String> tried =
          lines
              .skip(2)
              .map(line -> line.substring(0, line.indexOf(',')))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(tried).isEqualTo(present);
    }
  }

  @Test
  void everyProblemSaysWhereAndWhatWouldBeRight() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.filter(f -> !f.endsWith("expected.csv")).toList()) {
        ImportPlan plan = world.importing.plan(List.of(ImportFile.of(file)), Optional.empty());
        for (Complaint complaint : plan.problems()) {
          assertThat(complaint.message()).startsWith(complaint.file()).doesNotContain("{");
          if (complaint.row() > 0) {
            assertThat(complaint.message()).contains("row " + complaint.row());
          }
        }
      }
    }
  }
}
