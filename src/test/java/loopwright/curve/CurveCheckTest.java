package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurveCheckTest {
  private static final String GOOD =
      "10 -2; 20 -4; 30 -6; 40 -8; 50 -10; 60 -12; 70 -14; 80 -16; 90 -18";

  private static CurveCheck check(String readings, Unit gap, Unit volts, SignConvention sign) {
    List<CurveEntry.Cells> cells = new ArrayList<>();
    for (String reading : readings.split(";")) {
      String[] parts = reading.strip().split(" ");
      cells.add(
          new CurveEntry.Cells(cells.size() + 2, part(parts, 0), part(parts, 1), part(parts, 2)));
    }
    return CurveCheck.of(new CurveEntry(gap, volts, sign, cells), Curves.API);
  }

  private static String part(String[] parts, int i) {
    return parts.length > i ? parts[i].replace("_", "") : "";
  }

  private static CurveCheck check(String readings) {
    return check(readings, Unit.MIL, Unit.VOLT, SignConvention.NEGATIVE);
  }

  @Test
  void goodReadingsAreACurveWithoutQuestions() {
    CurveCheck check = check(GOOD);
    assertThat(check.complaints()).isEmpty();
    assertThat(check.questions()).isEmpty();
    Curve curve = check.curve().orElseThrow();
    assertThat(curve.readings()).hasSize(9);
    assertThat(curve.readings().get(0).gap()).hasToString("10 mil");
    assertThat(curve.readings().get(0).output()).hasToString("-2 V");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      text in a number    | 10 -2; 20 four; 30 -6; 40 -8   | NOT_A_NUMBER       | 3 | VOLTS
      text in a gap       | 10 -2; x20 -4; 30 -6; 40 -8    | NOT_A_NUMBER       | 3 | GAP
      empty gap           | 10 -2; _ -4; 30 -6; 40 -8      | EMPTY_CELL         | 3 | GAP
      empty voltage       | 10 -2; 20; 30 -6; 40 -8        | EMPTY_CELL         | 3 | VOLTS
      negative gap        | -10 -2; 20 -4; 30 -6; 40 -8    | NEGATIVE_GAP       | 2 | GAP
      gap of 4 m          | 10 -2; 20 -4; 30 -6; 157480 -8 | GAP_TOO_LARGE      | 5 | GAP
      gap without end     | 10 -2; 20 -4; 30 -6; 1e999 -8  | GAP_TOO_LARGE      | 5 | GAP
      a run sideways      | 10 -2 up; 20 -4 left; 30 -6 up | UNKNOWN_RUN        | 3 | RUN
      a run forgotten     | 10 -2 up; 20 -4; 30 -6 up      | EMPTY_CELL         | 3 | RUN
      repeated gap        | 10 -2; 20 -4; 20.0 -5; 30 -6   | REPEATED_GAP       | 4 | GAP
      one positive        | 10 -2; 20 -4; 30 6; 40 -8      | MIXED_SIGNS        | 4 | VOLTS
      one negative        | 10 2; 20 4; 30 -6; 40 8        | MIXED_SIGNS        | 4 | VOLTS
      beyond any supply   | 10 -2; 20 -4; 30 -30.1; 40 -8  | IMPOSSIBLE_VOLTAGE | 4 | VOLTS
      two points          | 10 -2; 90 -18                  | TOO_FEW_READINGS   | 2 | ''
      two points down     | 10 -2 up; 20 -4 up; 30 -6 up; 10 -2 down; 20 -4 down | TOO_FEW_READINGS | 5 | ''
      outside the profile | 100 -2; 200 -4; 300 -6         | OUTSIDE_RANGE      | 2 | GAP
      """)
  void cannotBeUsed(String name, String readings, CurveProblem problem, int row, String column) {
    CurveCheck check = check(readings);
    assertThat(check.curve()).isEmpty();
    assertThat(check.complaints()).hasSize(1);
    Remark remark = check.complaints().get(0);
    assertThat(remark.problem()).isEqualTo(problem);
    assertThat(remark.problem().stops()).isTrue();
    assertThat(remark.row()).isEqualTo(row);
    assertThat(remark.column() == null ? "" : remark.column().name()).isEqualTo(column);
    assertThat(remark.sentence()).endsWith(".").doesNotContain("{");
  }

  @Test
  void everyComplaintIsMadeAtOnceInOrderOfRows() {
    CurveCheck check = check("10 -2; 10 -4; 30 6; x y; 50 -99");
    assertThat(check.complaints()).map(Remark::row).containsExactly(3, 4, 5, 5, 6);
  }

  @Test
  void theUnitSlipIsNamed() {
    Remark mil =
        check(GOOD, Unit.MICROMETRE, Unit.VOLT, SignConvention.NEGATIVE).complaints().get(0);
    assertThat(mil.problem()).isEqualTo(CurveProblem.GAP_UNIT_SLIP);
    assertThat(mil.sentence()).contains("10 to 90 µm", "say mil, not µm");
    Remark micrometres = check("250 -2; 500 -4; 750 -6; 1000 -8; 1250 -10").complaints().get(0);
    assertThat(micrometres.problem()).isEqualTo(CurveProblem.GAP_UNIT_SLIP);
    assertThat(micrometres.sentence()).contains("say µm, not mil");
    assertThat(check("500 -2; 2000 -4; 4500 -6").complaints())
        .anyMatch(remark -> remark.sentence().contains("say µm"));
    assertThat(check("10 -2000; 20 -4000; 30 -6000").complaints().get(0).sentence())
        .contains("say mV");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      all positive       | 10 2; 20 4; 30 6       | V  | NEGATIVE  | MAGNITUDES      | 0
      below the supply   | 10 -2; 20 -4; 30 -23.6 | V  | NEGATIVE  | BEYOND_SUPPLY   | 4
      volts typed as mV  | 10 -2; 20 -4; 30 -6    | mV | NEGATIVE  | VOLTS_UNIT_SLIP | 0
      """)
  void isAskedBack(
      String name,
      String readings,
      String unit,
      SignConvention sign,
      CurveProblem problem,
      int row) {
    CurveCheck check = check(readings, Unit.MIL, Unit.named(unit).orElseThrow(), sign);
    assertThat(check.complaints()).isEmpty();
    assertThat(check.curve()).isPresent();
    assertThat(check.questions()).hasSize(1);
    assertThat(check.questions().get(0).problem()).isEqualTo(problem);
    assertThat(check.questions().get(0).problem().stops()).isFalse();
    assertThat(check.questions().get(0).row()).isEqualTo(row);
  }

  @Test
  void theEdgesOfWhatALoopGives() {
    CurveCheck check = check("10 0; 20 -23.5; 30 -30");
    assertThat(check.complaints()).isEmpty();
    assertThat(check.questions()).map(Remark::row).containsExactly(4);
  }

  @Test
  void magnitudesThatWereChosenAreNotAskedBack() {
    CurveCheck check = check("10 2; 20 4; 30 6", Unit.MIL, Unit.VOLT, SignConvention.MAGNITUDE);
    assertThat(check.questions()).isEmpty();
    assertThat(check.curve().orElseThrow().readings().get(0).volts()).isEqualTo(-2);
    assertThat(check.curve().orElseThrow().readings().get(0).output()).hasToString("2 V");
  }

  @Test
  void nothingAndFarTooMuchAreRefused() {
    CurveEntry empty = new CurveEntry(Unit.MIL, Unit.VOLT, SignConvention.NEGATIVE, List.of());
    assertThat(CurveCheck.of(empty, Curves.API).complaints().get(0).problem())
        .isEqualTo(CurveProblem.NO_READINGS);
    List<CurveEntry.Cells> many =
        IntStream.range(0, 1001)
            .mapToObj(i -> new CurveEntry.Cells(i + 1, "" + i, "-2", ""))
            .toList();
    CurveEntry tooMany = new CurveEntry(Unit.MIL, Unit.VOLT, SignConvention.NEGATIVE, many);
    assertThat(CurveCheck.of(tooMany, Curves.API).complaints().get(0).problem())
        .isEqualTo(CurveProblem.TOO_MANY_READINGS);
  }

  @Test
  void codesAreUnique() {
    assertThat(CurveProblem.values()).extracting(CurveProblem::code).doesNotHaveDuplicates();
  }
}
