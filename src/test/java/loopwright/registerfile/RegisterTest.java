package loopwright.registerfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.Verdict;
import loopwright.matching.rules.StandardRules;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Table;
import loopwright.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RegisterTest {
  private static final String HEADINGS =
      "tag,family,probe_serial,probe_length_m,cable_serial,cable_length_m,driver_serial,"
          + "system_length_m";

  private final Complaints complaints = new Complaints();

  private List<JudgedLoop> judge(String text, Families families) {
    Table table = new CsvReader(1).read("shop.csv", text.getBytes(StandardCharsets.UTF_8));
    Register register = Register.read(table, families, complaints);
    return complaints.isEmpty() ? register.judge(StandardRules.book()) : List.of();
  }

  private List<JudgedLoop> judge(String text) {
    return judge(text, Families.NOT_GIVEN);
  }

  private Judgement one(String row) {
    List<JudgedLoop> loops = judge(HEADINGS + "\n" + row + "\n");
    assertThat(complaints.kept()).isEmpty();
    assertThat(loops).hasSize(1);
    return loops.get(0).judgement();
  }

  private static Finding finding(Judgement judgement, String rule) {
    return judgement.findings().stream()
        .filter(finding -> finding.rule().name().equals(rule))
        .findFirst()
        .orElseThrow();
  }

  private void complainsOf(String text, String... parts) {
    assertThat(judge(text)).isEmpty();
    assertThat(complaints.kept()).isNotEmpty();
    for (String part : parts) {
      assertThat(complaints.kept())
          .extracting(Complaint::message)
          .anySatisfy(message -> assertThat(message).contains(part));
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # row                        | verdict   | balance | rule that speaks   | says
          T-1,,P1,1.0,C1,4.0,D1,5.0    | MATCHES   | 0       | length balance     | 1.0 + 4.0 = 5.0 m
          T-1,,P1,5.0,,,D1,5.0         | MATCHES   | 0       | complete           | no extension cable
          T-1,,P1,5.0,,0,D1,5.0        | MATCHES   | 0       | complete           | no extension cable
          T-1,,P1,1.0,C1,4.5,D1,5.0    | REFUSED   | 0.5     | length balance     | too long
          T-1,,P1,0.5,C1,4.0,D1,5.0    | REFUSED   | -0.5    | length balance     | too short
          T-1,,P1,1.0,C1,,D1,5.0       | UNKNOWN   |         | length balance     | the length of extension cable C1
          T-1,,P1,,C1,4.0,D1,5.0       | UNKNOWN   |         | length balance     | the length of probe P1
          T-1,,P1,1.0,C1,4.0,D1,       | UNKNOWN   |         | length balance     | what driver D1 is tuned for
          T-1,,,,C1,4.0,D1,5.0         | UNKNOWN   |         | complete           | No probe is recorded.
          T-1,,P1,1.0,C1,4.0,,         | UNKNOWN   |         | complete           | No driver is recorded.
          T-1,,P1,1.0,,4.0,D1,5.0      | ATTENTION | 0       | complete           | not identified
          T-1,,P1,1.0,not accessible,4.0,D1,5.0 | ATTENTION | 0 | complete        | not identified
          T-1,,P1,1.0,Not Accessible,,D1,5.0    | UNKNOWN   |   | length balance  | the length of extension cable
          T-1,,P1,1.0,C1,4.05,D1,5.0   | MATCHES   | 0.05    | length balance     | within the tolerance
          """)
  void judgesARow(String row, Verdict verdict, String balance, String rule, String says) {
    Judgement judgement = one(row);
    assertThat(judgement.verdict()).isEqualTo(verdict);
    assertThat(judgement.balance()).isEqualTo(balance == null ? null : Length.ofMetres(balance));
    assertThat(finding(judgement, rule).message()).contains(says);
  }

  @Test
  void withoutAFamilyTheFamilyRulesAreNotJudged() {
    Judgement judgement = one("T-1,,P1,1.0,C1,4.0,D1,5.0");
    assertThat(finding(judgement, "same family").verdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(finding(judgement, "lengths on offer").verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void aFamilyWithoutAListIsNotJudgedEither() {
    Judgement judgement = one("T-1,R8,P1,1.0,C1,4.0,D1,5.0");
    assertThat(judgement.verdict()).isEqualTo(Verdict.MATCHES);
    assertThat(finding(judgement, "same family").message())
        .isEqualTo("No list of families is given to judge by.");
  }

  @Test
  void aFamilyThatIsNotInTheListIsUnknownAndTheNearestIsNamed() {
    Families families = Families.of(List.of(FamilyView.of("R8").build()), List.of());
    Judgement judgement =
        judge(HEADINGS + "\nT-1,R-8,P1,1.0,C1,4.0,D1,5.0\n", families).get(0).judgement();
    assertThat(judgement.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(finding(judgement, "same family").sentences())
        .contains("'R-8' is not in the list")
        .contains("'R8'");
  }

  @Test
  void aSerialInTwoRowsOfOneKindRefusesEveryLoopThatHoldsIt() {
    List<JudgedLoop> loops =
        judge(
            HEADINGS
                + "\nT-1,,P1,1.0,C1,4.0,D1,5.0\nT-2,,p1,1.0,C2,4.0,D2,5.0\n"
                + "T-3,,D1,1.0,C3,4.0,P1,5.0\n");
    assertThat(loops)
        .extracting(loop -> loop.judgement().verdict())
        .containsExactly(Verdict.REFUSED, Verdict.REFUSED, Verdict.MATCHES);
    assertThat(finding(loops.get(0).judgement(), "not fitted elsewhere").message())
        .isEqualTo("Probe P1 also stands at T-2 (shop.csv, row 3).");
    assertThat(finding(loops.get(1).judgement(), "not fitted elsewhere").message())
        .isEqualTo("Probe p1 also stands at T-1 (shop.csv, row 2).");
  }

  @Test
  void zerosAtTheFrontOfASerialCount() {
    List<JudgedLoop> loops =
        judge(HEADINGS + "\nT-1,,007,1.0,C1,4.0,D1,5.0\nT-2,,7,1.0,C2,4.0,D2,5.0\n");
    assertThat(loops).extracting(l -> l.judgement().verdict()).containsOnly(Verdict.MATCHES);
  }

  @ParameterizedTest(name = "makers {0}, {1}")
  @CsvSource({
    "Aster, Borel, MATCHES",
    "Aster, aster, REFUSED",
    "Aster, '', REFUSED",
    "'', '', REFUSED",
  })
  void oneSerialOfTwoMakersIsTwoParts(String maker, String other, Verdict verdict) {
    List<JudgedLoop> loops =
        judge(
            HEADINGS
                + ",probe_maker\nT-1,,P1,1.0,C1,4.0,D1,5.0,"
                + maker
                + "\nT-2,,P1,1.0,C2,4.0,D2,5.0,"
                + other
                + "\n");
    assertThat(loops).extracting(l -> l.judgement().verdict()).containsOnly(verdict);
  }

  @Test
  void theSameCableTwiceInOneLoopIsSeen() {
    String row = HEADINGS + ",cable2_serial,cable2_length_m\nT-1,,P1,1.0,C1,2.0,D1,5.0,C1,2.0\n";
    Judgement judgement = judge(row).get(0).judgement();
    assertThat(finding(judgement, "not fitted elsewhere").message())
        .isEqualTo("Extension cable C1 stands twice in this loop.");
    assertThat(judgement.balance()).isEqualTo(Length.ZERO);
  }

  @Test
  void twoCablesAreAttention() {
    Judgement judgement =
        judge(HEADINGS + ",cable2_serial,cable2_length_m\nT-1,,P1,1.0,C1,2.0,D1,5.0,C2,2.0\n")
            .get(0)
            .judgement();
    assertThat(judgement.verdict()).isEqualTo(Verdict.ATTENTION);
  }

  @Test
  void feetAddUpExactly() {
    Judgement judgement =
        judge(
                "tag,probe_serial,probe_length_ft,cable_serial,cable_length_m,driver_serial,"
                    + "system_length_m\nT-1,P1,3.28,C1,4.000256,D1,5\n")
            .get(0)
            .judgement();
    assertThat(judgement.balance()).isEqualTo(Length.ZERO);
  }

  @Test
  void anEvidenceColumnGradesTheLengths() {
    List<JudgedLoop> loops =
        judge(
            HEADINGS
                + ",cable_length_evidence\n"
                + "T-1,,P1,1.0,C1,4.0,D1,5.0,Certificate\n"
                + "T-2,,P2,1.0,C2,4.0,D2,5.0,drawing\n"
                + "T-3,,P3,1.0,C3,4.0,D3,5.0,\n");
    assertThat(loops)
        .extracting(loop -> loop.judgement().verdict())
        .containsExactly(Verdict.MATCHES, Verdict.UNKNOWN, Verdict.UNKNOWN);
  }

  @ParameterizedTest(name = "tips {0}, {1}")
  @CsvSource({"8, 8.0, MATCHES", "5, 8, REFUSED", "'', 8, UNKNOWN"})
  void tipColumnsAreJudged(String probe, String driver, Verdict verdict) {
    Judgement judgement =
        judge(
                HEADINGS
                    + ",probe_tip_mm,driver_tip_mm\nT-1,,P1,1.0,C1,4.0,D1,5.0,"
                    + probe
                    + ","
                    + driver
                    + "\n")
            .get(0)
            .judgement();
    assertThat(finding(judgement, "tip and scale factor").verdict()).isEqualTo(verdict);
  }

  @Test
  void oneTipColumnAloneIsNotJudged() {
    Judgement judgement =
        judge(HEADINGS + ",probe_tip_mm\nT-1,,P1,1.0,C1,4.0,D1,5.0,8\n").get(0).judgement();
    assertThat(judgement.verdict()).isEqualTo(Verdict.MATCHES);
  }

  @Test
  void aPartsOwnFamilyCountsBeforeTheLoops() {
    Families families =
        Families.of(List.of(FamilyView.of("R8").build(), FamilyView.of("Q11").build()), List.of());
    Judgement judgement =
        judge(HEADINGS + ",probe_family\nT-1,R8,P1,1.0,C1,4.0,D1,5.0,Q11\n", families)
            .get(0)
            .judgement();
    assertThat(finding(judgement, "same family").message())
        .startsWith("Probe P1 is of family Q11, extension cable C1 of family R8.");
  }

  @Test
  void aMeasuredLengthIsOnlyHeldAgainstTheNominalOne() {
    Judgement judgement =
        judge(HEADINGS + ",cable_measured_length_m\nT-1,,P1,1.0,C1,4.0,D1,5.0,3.0\n")
            .get(0)
            .judgement();
    assertThat(judgement.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(judgement.balance()).isEqualTo(Length.ZERO);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          T-1,,P1,0,C1,4.0,D1,5.0       | row 2, column probe_length_m: '0' can't be the length
          T-1,,P1,1.0,C1,0,D1,5.0       | row 2, column cable_length_m: '0' can't be the length
          T-1,,P1,1.0,C1,-4,D1,5.0      | row 2, column cable_length_m: '-4' can't be the length
          T-1,,P1,1.0,C1,400,D1,5.0     | row 2, column cable_length_m: '400' can't be the length
          T-1,,P1,1.0,C1,4.0,D1,0.05    | row 2, column system_length_m: '0.05' can't be the length
          T-1,,P1,1.0,C1,4.0,D1,60.001  | row 2, column system_length_m: '60.001' can't be
          T-1,,P1,one,C1,4.0,D1,5.0     | row 2, column probe_length_m: 'one' is not a number
          T-1,,P1,1.0 m,C1,4.0,D1,5.0   | row 2, column probe_length_m: '1.0 m' is not a number
          ,,P1,1.0,C1,4.0,D1,5.0        | row 2, column tag: the cell is empty
          T-1,,P1,1.0,N/A,,D1,5.0       | row 2, column cable_serial: 'N/A' is not a serial
          T-1,,1.23E+11,1,C1,4,D1,5     | column probe_serial: '1.23E+11' is a number that a spreadsheet
          """)
  void namesRowColumnAndRemedy(String row, String message) {
    complainsOf(HEADINGS + "\n" + row + "\n", message);
    assertThat(complaints.total()).isEqualTo(1);
  }

  @Test
  void tellsAllProblemsAtOnce() {
    complainsOf(
        HEADINGS + "\nT-1,,P1,x,-,4.0,D1,400\nT-2,,P2,1.0,C2,y,D2,5.0\n",
        "row 2, column probe_length_m",
        "row 2, column cable_serial",
        "row 2, column system_length_m",
        "row 3, column cable_length_m");
    assertThat(complaints.total()).isEqualTo(4);
  }

  @Test
  void refusesAnUnknownHeadingWithTheNearest() {
    complainsOf(
        HEADINGS.replace("cable_length_m", "cable_lenght_mm") + ",bin\nT-1,,P1,1,C1,4,D1,5,x\n",
        "there is no column 'cable_lenght_mm'. Did you mean 'cable_length_m'?",
        "there is no column 'bin'.",
        "the column 'cable_length_m' is missing");
  }

  @Test
  void refusesOneLengthInTwoUnits() {
    complainsOf(
        HEADINGS + ",cable_length_ft\nT-1,,P1,1,C1,4,D1,5,13\n",
        "'cable_length_m' and 'cable_length_ft'");
  }

  @Test
  void refusesATagThatStandsTwice() {
    complainsOf(
        HEADINGS + "\nT-1,,P1,1,C1,4,D1,5\nt-1,,P2,1,C2,4,D2,5\n",
        "shop.csv, row 3, column tag: the tag 't-1' stands already in shop.csv, row 2.");
  }

  @Test
  void refusesAFileWithoutLoops() {
    complainsOf(HEADINGS + "\n\n ,,\n", "no row below the headings");
  }

  @Test
  void readsDecimalCommaTabsByteOrderMarkAndBreaksInQuotes() {
    String semicolons =
        "\uFEFF"
            + HEADINGS.replace(',', ';')
            + ";note;;\r\n\r\nT-1;;P1;1,0;C1;4,0;D1;5,0;\"two\r\nlines\";;\r\n";
    assertThat(judge(semicolons).get(0).judgement().verdict()).isEqualTo(Verdict.MATCHES);
    String tabs = HEADINGS.replace(',', '\t') + "\nT-1\t\tP1\t1,0\tC1\t4.0\tD1\t5\n";
    assertThat(judge(tabs).get(0).judgement().verdict()).isEqualTo(Verdict.MATCHES);
  }
}
