package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalPathTest {
  @ParameterizedTest
  @ValueSource(strings = {"/", "/loops/K301-VX2", "/parts?kind=probe&after=3", "/a//b", "/a:b"})
  void ourOwnPathsStay(String path) {
    assertThat(LocalPath.orFirstPage(path)).isEqualTo(path);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "loops",
        "//example.org",
        "///example.org",
        "/\\example.org",
        "\\/example.org",
        "/\t/example.org",
        "/\n/example.org",
        "https://example.org",
        "javascript:alert(1)",
        " /loops",
        "/sign-out",
        "/sign-in?then=/"
      })
  void everythingElseBecomesTheFirstPage(String path) {
    assertThat(LocalPath.orFirstPage(path)).isEqualTo("/");
  }

  @Test
  void noneIsTheFirstPage() {
    assertThat(LocalPath.orFirstPage(null)).isEqualTo("/");
  }
}
