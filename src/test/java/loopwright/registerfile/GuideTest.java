package loopwright.registerfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.matching.Evidence;
import loopwright.matching.Rule;
import loopwright.matching.rules.StandardRules;
import org.junit.jupiter.api.Test;

/** The guide knows every heading, word and rule that the program knows. */
class GuideTest {
  private static String guide() throws IOException {
    return Files.readString(Path.of("src/docs/register-file.md"));
  }

  @Test
  void describesEveryHeading() throws IOException {
    String guide = guide();
    assertThat(RegisterFile.headings()).allSatisfy(h -> assertThat(guide).contains("`" + h + "`"));
    assertThat(FamiliesFile.headings()).allSatisfy(h -> assertThat(guide).contains("`" + h + "`"));
  }

  @Test
  void describesEveryGradeOfEvidenceAndEveryRule() throws IOException {
    String guide = guide();
    for (Evidence evidence : Evidence.values()) {
      assertThat(guide).contains("`" + evidence.word() + "`");
    }
    assertThat(StandardRules.book().rules())
        .extracting(Rule::name)
        .allSatisfy(name -> assertThat(guide).contains(name));
  }
}
