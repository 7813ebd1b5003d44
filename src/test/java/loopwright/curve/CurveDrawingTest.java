package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;

class CurveDrawingTest {

  private static long count(String svg, String text) {
    return Pattern.compile(Pattern.quote(text)).matcher(svg).results().count();
  }

  @Test
  void aCurveOutsideItsLimitsIsCrossedOut() {
    CurveResult result =
        CurveAnalysis.of(
            Curves.inchGrid(-1.65, -3.53, -5.37, -7.17, -8.92, -10.61, -12.23, -13.77, -15.24),
            Curves.API);
    String svg = CurveDrawing.svg(result, "curve", Unit.MIL, "zero: mechanical touch");
    // eight increments, eight of nine deviations, one in the key
    assertThat(count(svg, "plot-mark outside")).isEqualTo(8 + 8 + 1);
    assertThat(svg)
        .contains(
            "does not conform to api670-2mm", "200.0 mV/mil ±5 %", "±1 mil", "id=\"curve-hatch\"");
  }

  @Test
  void finerStepsAndTheDownRunAreDrawn() {
    List<CurveReading> readings = new ArrayList<>();
    for (double gap : Curves.steps(125, 2500, 125)) {
      readings.add(CurveReading.of(Run.UP, gap, -gap / 127));
    }
    for (double gap : Curves.steps(250, 2250, 250)) {
      readings.add(CurveReading.of(Run.DOWN, gap, -gap / 127 - 0.01));
    }
    CurveResult result = CurveAnalysis.of(new Curve(readings), Curves.API);
    String svg = CurveDrawing.svg(result, "curve", Unit.MICROMETRE, "");
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(count(svg, "\"plot-stem\"")).isEqualTo(20 + 9);
    assertThat(count(svg, "plot-step within")).isEqualTo(8 + 8);
    // nineteen fine steps, and the whole step from 2,250 to 2,500 µm that lies past the range
    assertThat(count(svg, "plot-step not-judged")).isEqualTo(19 + 1);
    assertThat(svg).contains("down run", "drawn, not judged").doesNotContain("outside its limit");
  }
}
