package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class SvgTest {

  @Test
  void writesWellFormedText() {
    Svg.Element root = Svg.drawing(30, 20, "a < b & \"c\"");
    root.group("g").line(0, 1.006, 1e-9, -3).set("class", "l");
    root.label(1, 2, "end", "5 > 4\u0000");
    assertThat(root)
        .hasToString(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"30\" height=\"20\""
                + " viewBox=\"0 0 30 20\" role=\"img\" aria-label=\"a &lt; b &amp; &quot;c&quot;\">"
                + "<g class=\"g\"><line x1=\"0\" y1=\"1.01\" x2=\"0\" y2=\"-3\" class=\"l\"/></g>"
                + "<text x=\"1\" y=\"2\" text-anchor=\"end\">5 &gt; 4\uFFFD</text></svg>");
  }

  @Test
  void refusesCoordinatesThatAreNowhere() {
    Svg.Element root = Svg.drawing(30, 20, "x");
    assertThatIllegalArgumentException().isThrownBy(() -> root.set("x", Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> root.rect(0, 0, Double.POSITIVE_INFINITY, 1));
  }
}
