package loopwright.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import loopwright.problem.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LabelBaseTest {
  private static final LabelBase BASE =
      new LabelBase(Optional.of("https://loops.example/"), List.of("http://10.0.0.5:8470"), false);

  private static final String ASKED = "http://box-7:8470";

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          https://loops.example/c/1C00D10,     /c/1C00D10
          HTTPS://LOOPS.EXAMPLE/c/1C00D10,     /c/1C00D10
          http://loops.example/c/1C00D10,      /c/1C00D10
          https://loops.example:443/c/1C00D10, /c/1C00D10
          http://10.0.0.5:8470/c/1C00D10,      /c/1C00D10
          http://box-7:8470/parts/12,          /parts/12
          """)
  void ownAddressesPresentFormerAndAskedAreRead(String scanned, String path) {
    assertThat(BASE.path(scanned, ASKED)).isEqualTo(path);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "https://other.example/c/1C00D10",
        "https://loops.example.evil.example/c/1C00D10",
        "https://loops.example:8443/c/1C00D10",
        "https://loops.exampl/c/1C00D10",
        "https://loops.example",
      })
  void addressesOfOthersAreRefusedSoThatTheirCodesAreNotTakenForOurs(String scanned) {
    assertThatThrownBy(() -> BASE.path(scanned, ASKED))
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> {
              assertThat(refused.problem()).isEqualTo(LabelProblem.FOREIGN);
              assertThat(refused.parts().get(0)).startsWith("https://").doesNotContain("/c/");
            });
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          loops.example,                   neither https
          ftp://loops.example,             neither https
          https://,                        no address
          https:///c,                      no host
          https://loops.example?a=1,       more than host
          https://me@loops.example,        more than host
          https://loops example,           no address
          """)
  void whatCanBeNoBaseIsRefused(String text, String why) {
    assertThatThrownBy(() -> new LabelBase(Optional.of(text), List.of(), false))
        .isInstanceOf(Refused.class)
        .hasMessageContaining(why);
  }

  @Test
  void withoutABaseNoLabelIsPrintedButForTrying() {
    assertThatThrownBy(() -> LabelBase.NOT_GIVEN.printed(ASKED))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("--base-address");
    assertThat(LabelBase.FOR_TRYING.printed(ASKED)).isEqualTo(ASKED);
    assertThat(BASE.printed(ASKED)).isEqualTo("https://loops.example");
  }
}
