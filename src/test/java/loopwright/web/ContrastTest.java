package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Contrast of every pair of colours in which text or an edge is drawn. Formula and limits: W3C Web
 * Content Accessibility Guidelines 2.2, relative luminance, success criteria 1.4.3 (text 4.5 : 1)
 * and 1.4.11 (edges of fields 3 : 1).
 */
class ContrastTest {
  private static final Pattern VARIABLE = Pattern.compile("--([a-z-]+): (#[0-9a-f]{6});");

  @ParameterizedTest(name = "{0} on {1} at least {2}")
  @CsvSource({
    "ink, paper, 4.5",
    "ink, sheet, 4.5",
    "ink, grid, 4.5",
    "soft, paper, 4.5",
    "soft, sheet, 4.5",
    "soft, grid, 4.5",
    "soft, blue-wash, 4.5",
    "blue, paper, 4.5",
    "blue, sheet, 4.5",
    "blue, grid, 4.5",
    "blue, blue-wash, 4.5",
    "sheet, blue, 4.5",
    "sheet, ink, 4.5",
    "ochre, ochre-wash, 4.5",
    "ochre, sheet, 4.5",
    "brick, brick-wash, 4.5",
    "brick, sheet, 4.5",
    "brick, paper, 4.5",
    "pine, pine-wash, 4.5",
    "pine, sheet, 4.5",
    "ink, blue-wash, 4.5",
    "ink, ochre-wash, 4.5",
    "ink, brick-wash, 4.5",
    "ink, pine-wash, 4.5",
    "blue, ochre-wash, 4.5",
    "blue, brick-wash, 4.5",
    "edge, sheet, 3",
    "edge, paper, 3",
  })
  void isReadableInLightAndDark(String front, String ground, double least) throws IOException {
    String[] css = css().split("prefers-color-scheme: dark", 2);
    for (Map<String, String> colours : List.of(colours(css[0]), colours(css[1]))) {
      assertThat(contrast(colours.get(front), colours.get(ground)))
          .as("%s on %s", colours.get(front), colours.get(ground))
          .isGreaterThanOrEqualTo(least);
    }
  }

  @Test
  void bothModesNameTheSameColours() throws IOException {
    String[] css = css().split("prefers-color-scheme: dark", 2);
    assertThat(colours(css[0]).keySet()).isEqualTo(colours(css[1]).keySet()).hasSize(15);
  }

  /** Black on white 21, the same colour 1, and #777777 on white 4.48 (W3C's own example). */
  @ParameterizedTest
  @CsvSource({"#000000, #ffffff, 21.00", "#777777, #777777, 1.00", "#777777, #ffffff, 4.48"})
  void theFormulaIsThePublishedOne(String front, String ground, double ratio) {
    assertThat(contrast(front, ground)).isEqualTo(ratio, within(.005));
  }

  private static String css() throws IOException {
    try (InputStream in = ContrastTest.class.getResourceAsStream("/assets/loopwright.css")) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  private static Map<String, String> colours(String css) {
    Map<String, String> colours = new TreeMap<>();
    Matcher found = VARIABLE.matcher(css);
    while (found.find()) {
      colours.put(found.group(1), found.group(2));
    }
    return colours;
  }

  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + .05) / (Math.min(a, b) + .05);
  }

  private static double luminance(String hex) {
    return .2126 * part(hex, 1) + .7152 * part(hex, 3) + .0722 * part(hex, 5);
  }

  private static double part(String hex, int at) {
    double part = Integer.parseInt(hex.substring(at, at + 2), 16) / 255.0;
    return part <= .04045 ? part / 12.92 : Math.pow((part + .055) / 1.055, 2.4);
  }
}
