package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import loopwright.units.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CurveTextTest {

  private static CurveText read(String pasted) {
    return CurveText.read(pasted, Unit.MIL, Unit.VOLT, SignConvention.NEGATIVE);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10\t-2.5\n20\t-4\n30\t-6,0",
        "10;-2,5\n20;-4\n30;-6.0\n",
        "10, -2,5\n20, -4\n30, -6",
        "10 -2.5\n20   -4\n\n  30 -6",
        "10,-2.5\r\n20,-4\r\n30,-6\r\n",
        "gap mil\tvolts\n10\t-2.5\t\n20\t-4\t\n30\t-6\t",
        "\uFEFFGap;Output (V)\n10;−2,5\n20;−4\n30;−6",
      })
  void readsWhatASpreadsheetGives(String pasted) {
    CurveCheck check = read(pasted).check(Curves.API);
    assertThat(check.complaints()).isEmpty();
    assertThat(check.curve().orElseThrow().readings())
        .extracting(CurveReading::volts)
        .containsExactly(-2.5, -4.0, -6.0);
  }

  @Test
  void readsRunsByWord() {
    Curve curve =
        read("10\t-2\tup\n20\t-4\tup\n30\t-6\tup\n30\t-6\tDown\n20\t-4\tdown\n10\t-2\tdown")
            .check(Curves.API)
            .curve()
            .orElseThrow();
    assertThat(curve.runs()).containsExactly(Run.UP, Run.DOWN);
  }

  @Test
  void readsRunsSideBySide() {
    CurveText text =
        read("gap\tup\tdown\n10\t-2\t-2.1\n20\t-4\t\n30\t-6\t-6.1\n40\t\t-8.1\n50\t-10");
    Curve curve = text.check(Curves.API).curve().orElseThrow();
    assertThat(curve.of(Run.UP))
        .extracting(CurveReading::volts)
        .containsExactly(-2.0, -4.0, -6.0, -10.0);
    assertThat(curve.of(Run.DOWN))
        .extracting(CurveReading::volts)
        .containsExactly(-2.1, -6.1, -8.1);
    List<Remark> complaints =
        read("10\t-2\t-2.1\n20\t-4\tx\n30\t-6\t-6.1").check(Curves.API).complaints();
    assertThat(complaints)
        .extracting(Remark::row, Remark::column)
        .containsExactly(tuple(2, Remark.Column.DOWN_VOLTS));
  }

  @Test
  void commasThatCouldBeDecimalAreAskedAbout() {
    List<Remark> complaints = read("10,-2,5\n20,-4,0\n30,-6,0").check(Curves.API).complaints();
    assertThat(complaints)
        .extracting(Remark::problem)
        .contains(CurveProblem.COMMAS)
        .doesNotContain(CurveProblem.NOT_A_NUMBER);
    assertThat(read("10,5,-2,5\n").complaints().get(0).problem())
        .isEqualTo(CurveProblem.TOO_MANY_CELLS);
  }

  @Test
  void aHeadingThatContradictsTheChoiceIsAComplaint() {
    CurveCheck check = read("gap_um\tmillivolts\n10\t-2\n20\t-4\n30\t-6").check(Curves.API);
    assertThat(check.curve()).isEmpty();
    assertThat(check.complaints())
        .extracting(Remark::sentence)
        .anyMatch(sentence -> sentence.contains("says µm, but mil"))
        .anyMatch(sentence -> sentence.contains("says mV, but V"));
  }

  @Test
  void rowsAreCountedAsPasted() {
    List<Remark> complaints =
        read("gap volts\n\n10 -2\n20 vier\n30 -6").check(Curves.API).complaints();
    assertThat(complaints).extracting(Remark::row).containsExactly(4);
    assertThat(complaints.get(0).sentence()).startsWith("'vier' is not a number");
  }

  @Property
  void whateverIsPastedThereIsAnAnswer(@ForAll String pasted) {
    CurveCheck check = read(pasted).check(Curves.API);
    assertThat(check.curve().isPresent()).isEqualTo(check.complaints().isEmpty());
  }
}
