package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssetsTest {
  private static SampleSite site;

  @BeforeAll
  static void start() {
    site = new SampleSite();
  }

  @AfterAll
  static void stop() {
    site.close();
  }

  @ParameterizedTest
  @CsvSource({
    "loopwright.css, text/css",
    "loopwright.js, text/javascript",
    "htmx.js, text/javascript",
    "loopwright.svg, image/svg+xml",
    "fonts/plex-sans-latin-400.woff2, font/woff2",
    "fonts/plex-mono-licence.txt, text/plain",
  })
  void areServedToEverybodyWithTheirType(String path, String type) {
    Answer answer = site.stranger().get("/assets/" + path);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Type")).startsWith(type);
    assertThat(answer.body()).isNotEmpty();
    assertThat(answer.header("Set-Cookie")).isEmpty();
  }

  @Test
  void addressesOfAPageAreKeptForAYearAndOthersAreAskedForAgain() {
    Visitor visitor = site.stranger();
    String address =
        visitor.get("/sign-in").page().select("link[rel=stylesheet]").first().attr("href");
    assertThat(address).matches("/assets/loopwright\\.css\\?v=[0-9a-f]{12}");
    assertThat(visitor.get(address).header("Cache-Control")).contains("immutable");
    Answer bare = visitor.get("/assets/loopwright.css?v=old");
    assertThat(bare.header("Cache-Control")).isEqualTo("public, max-age=300");
    Answer again = visitor.get("/assets/loopwright.css", "If-None-Match", bare.header("ETag"));
    assertThat(again.status()).isEqualTo(304);
    assertThat(again.body()).isEmpty();
  }

  @Test
  void everyFontOfTheStyleSheetIsThere() {
    Visitor visitor = site.stranger();
    String css = visitor.get("/assets/loopwright.css").body();
    assertThat(css.lines().filter(line -> line.startsWith("@font-face")))
        .hasSize(8)
        .allSatisfy(
            line -> {
              String file = line.replaceFirst(".*url\\(\"", "").replaceFirst("\".*", "");
              assertThat(visitor.get("/assets/" + file).status()).isEqualTo(200);
            });
  }
}
