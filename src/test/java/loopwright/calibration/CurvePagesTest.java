package loopwright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import loopwright.journal.JournalStore;
import loopwright.loop.LoopWorld;
import loopwright.people.People;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page on which a curve is typed. Curves here are synthetic: −0.2 V a mil. */
@Tag("zone")
class CurvePagesTest {
  private static final String PAGE = "/loops/K301-VX1/curve";
  private static final String[] GAPS = {"10", "20", "30", "40", "50", "60", "70", "80", "90"};
  private static final String[] VOLTS = {
    "-2.00", "-4.00", "-6.00", "-8.00", "-10.00", "-12.00", "-14.00", "-16.00", "-18.00"
  };
  private static final String FILE =
      "gap_mil,volts\n10,-2\n20,-4\n30,-6\n40,-8\n50,-10\n60,-12\n70,-14\n80,-16\n90,-18\n";

  private static LoopWorld world;
  private static Visitor technician;
  private static int minute;

  private long before;

  @BeforeAll
  static void start() {
    world = new LoopWorld();
    technician = world.technician;
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  @BeforeEach
  void look() {
    before = head();
  }

  private static long head() {
    return world.app.database().read(JournalStore::head);
  }

  /** The page filled in well, taken at a minute of its own. */
  private static FilledForm filled() {
    minute++;
    return FilledForm.of(technician.get(PAGE).page(), "#curve")
        .set("profile", "api670-2mm")
        .set("gap-unit", "mil")
        .set("gap", GAPS)
        .set("up", VOLTS)
        .set("down", "", "")
        .set("on", "2026-02-20")
        .set("time", "%02d:%02d".formatted(8 + minute / 60, minute % 60))
        .set("reason", "outage");
  }

  private static String[] with(String[] cells, int row, String text) {
    String[] changed = cells.clone();
    changed[row - 1] = text;
    return changed;
  }

  private static Visitor.Answer keep(FilledForm form) {
    return form.send(technician, "do", "keep");
  }

  private static Document kept(FilledForm form) {
    Visitor.Answer answer = keep(form);
    assertThat(answer.status())
        .as(answer.page().select(".complaints, .complaint").text())
        .isEqualTo(303);
    return technician.get(answer.location()).page();
  }

  /** Nothing was stored, and everything sent stands on the page again. */
  private Document refused(FilledForm form, Visitor.Answer answer) {
    assertThat(answer.status()).isEqualTo(422);
    assertThat(head()).as("nothing stored").isEqualTo(before);
    Document page = answer.page();
    FilledForm again = FilledForm.of(page, "#curve");
    for (String name : List.of("gap", "up", "down")) {
      assertThat(typed(again, name)).as(name).isEqualTo(typed(form, name));
    }
    for (String name :
        List.of("on", "time", "performed-by", "alloy", "reason", "no-curve", "no-curve-reason")) {
      assertThat(again.values(name)).as(name).isEqualTo(form.values(name));
    }
    return page;
  }

  private static List<String> typed(FilledForm form, String name) {
    String all = String.join("\n", form.values(name)).stripTrailing();
    return Arrays.asList(all.split("\n"));
  }

  private static String complaint(Document page, String field) {
    return page.select("#" + field + "-about .complaint").text();
  }

  private static String rowComplaint(Document page, int row) {
    return page.select("#readings tbody tr").get(row - 1).select(".complaint").text();
  }

  @Test
  void aCurveIsKeptWithTheNumbersAsTyped() {
    Document page = kept(filled().set("alloy", "42CrMo4"));
    assertThat(page.select("h1").text()).contains("as found");
    assertThat(page.text())
        .contains("conforms")
        .contains("42CrMo4")
        .contains("-10.00 V")
        .contains("50 mil")
        .contains("PR-1")
        .contains("XC-1")
        .contains("outage");
    assertThat(page.select("svg")).isNotEmpty();
  }

  @Test
  void aTemperatureOutsideTheProfileIsAskedBackAndStaysSaid() {
    FilledForm form =
        filled().set("temperature", "140").set("temperature-unit", "°F").set("run-out", "0.2");
    form.set("run-out-unit", "mil").set("procedure", "CP-7, edition 3");
    Document asked = refused(form, keep(form));
    assertThat(asked.select(".notice").text())
        .contains("Taken at 140 °F; the limits of api670-2mm hold at 0 to 45 °C");
    Document record =
        kept(FilledForm.of(asked, "#curve").set("confirmed", "yes").set("reason", "outage"));
    assertThat(record.select(".notice.wrong").text()).contains("Taken at 140 °F");
    assertThat(record.select("dl.facts").text()).contains("140 °F", "0.2 mil", "CP-7, edition 3");
    assertThat(record.text()).contains("conforms");
    assertThat(kept(filled().set("temperature", "21").set("temperature-unit", "°C")).text())
        .doesNotContain("Taken at 21");
  }

  @ParameterizedTest
  @CsvSource({
    "temperature, 600, °C, between −200 and 500",
    "temperature, warm, °C, is not one number",
    "run-out, -1, µm, between 0 and 500",
    "temperature, 20, , Choose the unit"
  })
  void conditionsThatCannotBeAreToldAtTheirField(
      String field, String typed, String unit, String told) {
    FilledForm form = filled().set(field, typed).set(field + "-unit", unit == null ? "" : unit);
    assertThat(refused(form, keep(form)).select(".complaint, .complaints").text()).contains(told);
  }

  @Test
  void anAsLeftDatedBeforeTheOpenAsFoundIsAskedBack() {
    FilledForm found = filled().set("stage", "as found").set("on", "2026-02-25");
    String number = kept(found).select("h1 .n").text();
    before = head();
    FilledForm left = filled().set("stage", "as left").set("on", "2026-02-24");
    Document asked = refused(left, keep(left));
    assertThat(asked.select(".notice").text()).contains(number, "as found");
    kept(FilledForm.of(asked, "#curve").set("confirmed", "yes").set("reason", "outage"));
    kept(filled().set("stage", "as left").set("on", "2026-02-26"));
    kept(filled().set("stage", "as left").set("on", "2026-02-24"));
  }

  @Test
  void aTargetAlloyThatIsTooLongIsToldAtItsField() {
    FilledForm form = filled().set("alloy", "X".repeat(61));
    assertThat(complaint(refused(form, keep(form)), "alloy")).contains("61").contains("60");
    assertThat(kept(filled().set("alloy", "X".repeat(60))).text()).contains("X".repeat(60));
  }

  @ParameterizedTest
  @CsvSource({"up", "gap"})
  void aReadingTypedTooLongIsToldAtItsRow(String field) {
    String[] cells = field.equals("gap") ? GAPS : VOLTS;
    FilledForm form = filled().set(field, with(cells, 3, cells[2] + "." + "0".repeat(30)));
    form = field.equals("gap") ? form : form.set(field, with(cells, 3, cells[2] + "0".repeat(26)));
    assertThat(rowComplaint(refused(form, keep(form)), 3)).contains("30");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      text in a voltage       | up  | 4 | four     | is not a number
      text in a gap           | gap | 4 | x40      | is not a number
      two numbers             | up  | 4 | 1.000,5  | is not a number
      empty gap               | gap | 4 | ''       | Give the gap
      a gap twice             | gap | 4 | 30       | first in row 3
      a negative gap          | gap | 4 | -40      | is negative
      a gap of 4 m            | gap | 4 | 157480   | 60 mm
      a polarity slip         | up  | 4 | 8.00     | write all with their sign
      more than any supply    | up  | 4 | -31      | between 0 and
      millivolts for volts    | up  | 4 | -8000    | say mV
      """)
  void whatCannotBeReadIsToldAtItsRow(
      String name, String field, int row, String text, String told) {
    FilledForm form = filled().set(field, with(field.equals("gap") ? GAPS : VOLTS, row, text));
    assertThat(rowComplaint(refused(form, keep(form)), row)).contains(told);
  }

  @Test
  void aCurveOfTwoPointsIsRefused() {
    FilledForm form = filled().set("gap", "10", "90").set("up", "-2", "-18");
    assertThat(refused(form, keep(form)).select(".complaints").text())
        .contains("at least 3 readings");
  }

  @Test
  void micrometresTypedAsMilAreAskedBack() {
    String[] micrometres = {"250", "500", "750", "1000", "1250"};
    FilledForm form = filled().set("gap", micrometres).set("up", Arrays.copyOf(VOLTS, 5));
    assertThat(refused(form, keep(form)).select(".complaints").text()).contains("say µm, not mil");
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      gap-unit   | furlong   | µm, mil
      gap-unit   | V         | µm, mil
      volts-unit | kV        | V, mV
      volts-unit | mil       | V, mV
      sign       | sideways  | with or without
      zero       | somewhere | Choose
      stage      | whenever  | Choose
      profile    | mine      | Choose the profile
      """)
  void aChoiceThatIsNoneIsNotReplacedByAUsualOne(String field, String value, String told) {
    FilledForm form = filled().set(field, value);
    assertThat(complaint(refused(form, keep(form)), field)).contains(told);
    FilledForm without = filled().without(field);
    assertThat(complaint(refused(without, keep(without)), field)).contains(told);
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "on, 2026-02-30",
    "on, yesterday",
    "time, 25:10",
    "time, ''",
    "performed-by, ''",
    "reason, ''"
  })
  void whoAndWhenAreNeeded(String field, String value) {
    FilledForm form = filled().set(field, value);
    assertThat(complaint(refused(form, keep(form)), field)).isNotEmpty();
  }

  @Test
  void aMomentToComeIsRefused() {
    FilledForm form = filled().set("on", "2026-03-02");
    assertThat(complaint(refused(form, keep(form)), "on")).contains("future");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      all without a minus | 2 4 6 8 10 12 14 16 18                  | read as magnitudes
      below the supply    | -2 -4 -6 -8 -10 -12 -14 -16 -23.9       | −24 V supply
      """)
  void whatIsDoubtfulIsAskedBackAndKeptWhenConfirmed(String name, String volts, String asked) {
    FilledForm form = filled().set("up", volts.split(" "));
    Document page = refused(form, keep(form));
    assertThat(complaint(page, "confirmed")).isNotEmpty();
    assertThat(page.select(".notice").text()).contains(asked);
    kept(form.set("confirmed", "yes"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      dead         | -0.7 -0.7 -0.7 -0.7 -0.7 -0.7 -0.7 -0.7 -0.7
      saturated    | -2 -4 -6 -8 -10 -12 -14 -14.1 -14.1
      not monotone | -2 -4 -6 -5.5 -10 -12 -14 -16 -18
      """)
  void aBadAsFoundIsAResult(String name, String volts) {
    Document page = kept(filled().set("up", volts.split(" ")));
    assertThat(page.select(".verdict").first().text()).isEqualTo("does not conform");
  }

  @Test
  void unitsSignsAndDecimalMarksAsTheShopWritesThem() {
    Document page =
        kept(
            filled()
                .set("gap-unit", "µm")
                .set("gap", "250", "500", "750", "1000", "1250", "1500", "1750", "2000", "2250")
                .set("volts-unit", "mV")
                .set("sign", "magnitude")
                .set(
                    "up", "1968,5", "3937", "5905,5", "7874", "9842,5", "11811", "13779,5", "15748",
                    "17716,5"));
    assertThat(page.text()).contains("conforms").contains("1968,5 mV").contains("2250 µm");
    assertThat(page.text()).contains("7.874 mV/µm");
  }

  @Test
  void upAndDownShowTheirDifference() {
    Document page = kept(filled().set("down", with(VOLTS, 5, "-10.05")).set("stage", "as left"));
    assertThat(page.text()).contains("Largest difference up to down").contains("as left");
  }

  @Test
  void nothingTouchedStandsForBoth() {
    Document page = kept(filled().set("stage", "as found and as left"));
    assertThat(page.select("h1").text()).contains("as found and as left");
  }

  @Test
  void noCurveIsAResultAndKeepsTheReadingsThatWereTaken() {
    Document page =
        kept(
            filled()
                .set("gap", "10", "20")
                .set("up", "-0.71", "-0.72")
                .set("no-curve", "yes")
                .set("no-curve-reason", "output dead, cable cut"));
    assertThat(page.text())
        .contains("no curve")
        .contains("output dead, cable cut")
        .contains("-0.71 V")
        .contains("20 mil");
    Document none =
        kept(
            filled()
                .set("up", "")
                .set("no-curve", "yes")
                .set("no-curve-reason", "probe out of reach"));
    assertThat(none.text()).contains("probe out of reach");
  }

  @Test
  void noCurveNeedsItsReasonAndReadableReadings() {
    FilledForm form = filled().set("no-curve", "yes");
    assertThat(complaint(refused(form, keep(form)), "no-curve-reason")).isNotEmpty();
    FilledForm text =
        filled()
            .set("no-curve", "yes")
            .set("no-curve-reason", "dead")
            .set("up", with(VOLTS, 2, "x"));
    assertThat(rowComplaint(refused(text, keep(text)), 2)).contains("is not a number");
  }

  @Test
  void theSameCurveTwiceIsStoredOnce() {
    FilledForm form = filled();
    Visitor.Answer first = keep(form);
    assertThat(first.status()).isEqualTo(303);
    long after = head();
    Visitor.Answer second = keep(form);
    assertThat(second.status()).isEqualTo(303);
    assertThat(second.location()).isEqualTo(first.location());
    assertThat(head()).isEqualTo(after);
  }

  @Test
  void twoClicksAtOnceStoreOne() {
    FilledForm form = filled();
    List<CompletableFuture<Visitor.Answer>> clicks =
        Stream.generate(() -> CompletableFuture.supplyAsync(() -> keep(form))).limit(4).toList();
    assertThat(clicks.stream().map(CompletableFuture::join).map(Visitor.Answer::location))
        .allMatch(place -> place.startsWith("/calibrations/"))
        .hasSize(4);
    assertThat(clicks.stream().map(c -> c.join().location()).distinct()).hasSize(1);
    assertThat(head()).isEqualTo(before + 1);
  }

  @Test
  void otherReadingsOfTheSameMomentAreAskedBack() {
    FilledForm form = filled();
    kept(form);
    before = head();
    form.set("up", with(VOLTS, 9, "-17.95"));
    Document page = refused(form, keep(form));
    assertThat(complaint(page, "confirmed")).isNotEmpty();
    assertThat(page.select(".notice").text()).contains("already");
    kept(form.set("confirmed", "yes"));
  }

  @Test
  void theResultIsWorkedOutWhileOneTypes() {
    FilledForm form = filled();
    Visitor.Answer judged = form.sentTo(PAGE + "/judged").send(technician, "do", "");
    assertThat(judged.status()).isEqualTo(200);
    assertThat(judged.page().select("#judged > div .verdict").text()).isEqualTo("conforms");
    assertThat(judged.page().select("#verdict-now[hx-swap-oob] .verdict").text())
        .isEqualTo("conforms");
    Visitor.Answer wrong = form.set("up", with(VOLTS, 3, "x")).send(technician, "do", "");
    assertThat(wrong.page().select("#judged .complaints").text()).startsWith("Row 3: 'x'");
    Visitor.Answer none = form.set("sign", "?").send(technician, "do", "");
    assertThat(none.page().select("#judged .complaints").text()).contains("with or without");
    none =
        form.set("sign", "negative").set("profile", "").set("up", VOLTS).send(technician, "do", "");
    assertThat(none.page().select("#judged .complaints").text()).contains("Choose the profile");
    assertThat(head()).isEqualTo(before);
  }

  @Test
  void aFileFillsTheRows() {
    FilledForm form =
        filled()
            .set("up", "")
            .choose("file", "curve.csv", "gap_mil;volts;run\n10;-2,0;up\n20;-4;up\n10;-2,1;down\n");
    Visitor.Answer answer = form.send(technician, "do", "load");
    assertThat(answer.status()).isEqualTo(200);
    FilledForm loaded = FilledForm.of(answer.page(), "#curve");
    assertThat(typed(loaded, "gap")).containsExactly("10", "20");
    assertThat(typed(loaded, "up")).containsExactly("-2,0", "-4");
    assertThat(typed(loaded, "down")).containsExactly("-2,1");
    assertThat(head()).isEqualTo(before);
  }

  @Test
  void aBlockFromASpreadsheetFillsTheRows() {
    FilledForm form = filled().set("up", "").set("block", "Gap mil\tV\n10\t-2,00\n20\t-4,00\n");
    Visitor.Answer answer = form.send(technician, "do", "paste");
    assertThat(answer.status()).isEqualTo(200);
    FilledForm filled = FilledForm.of(answer.page(), "#curve");
    assertThat(typed(filled, "gap")).containsExactly("10", "20");
    assertThat(typed(filled, "up")).containsExactly("-2,00", "-4,00");
    form.set("gap-unit", "µm");
    Document page = refused(form, form.send(technician, "do", "paste"));
    assertThat(complaint(page, "block")).contains("Line 1: the heading says mil, but µm");
    assertThat(page.select("textarea[name=block]").text()).contains("-2,00");
  }

  @Test
  void aGapThatStandsTwiceInAFileStandsTwiceInTheRows() {
    FilledForm form =
        filled().set("up", "").choose("file", "twice.csv", FILE.replace("30,-6", "20,-6"));
    Visitor.Answer answer = form.send(technician, "do", "load");
    FilledForm loaded = FilledForm.of(answer.page(), "#curve");
    assertThat(typed(loaded, "gap")).startsWith("10", "20", "20", "40");
    assertThat(typed(loaded, "up")).startsWith("-2", "-4", "-6", "-8");
    assertThat(rowComplaint(answer.page(), 3)).contains("first in row 2");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      run.csv     | gap_mil,volts,run/10,-2,up/20,-4,sideways/30,-6,up | 'sideways' is not a run
      run.csv     | gap_mil,volts,run/10,-2,up/20,-4,/30,-6,down       | row 3
      unit.csv    | gap_inch,volts/10,-2                               | gap_inch
      both.csv    | gap_um,gap_mil,volts/1,1,-2                        | say the same thing
      none.csv    | gap_um/1                                           | volts or millivolts
      blank.csv   | ''                                                 | Choose a CSV file
      """)
  void aFileThatCannotBeReadIsToldAtItsField(String name, String text, String told) {
    FilledForm form = filled().set("up", "", "").choose("file", name, text.replace('/', '\n'));
    Document page = refused(form, form.send(technician, "do", "load"));
    assertThat(complaint(page, "file")).contains(told);
  }

  @Test
  void aBinaryFileALargeOneAndAnEndlessOneAreToldAtTheirField() {
    FilledForm form = filled().set("up", "");
    byte[] binary = {(byte) 0x50, 0x4b, 3, 4, 0, 0, 8, 0};
    Document page =
        refused(form, form.choose("file", "curve.csv", binary).send(technician, "do", "load"));
    assertThat(complaint(page, "file")).contains("not a text file");
    page =
        refused(
            form,
            form.choose("file", "curve.csv", new byte[50 << 20]).send(technician, "do", "load"));
    assertThat(complaint(page, "file")).contains("at most 2 MB");
    String endless = "gap_um,volts\n" + "1,-1\n".repeat(20_000);
    page = refused(form, form.choose("file", "curve.csv", endless).send(technician, "do", "load"));
    assertThat(complaint(page, "file")).contains("20000 readings");
  }

  @Test
  void aFileDoesNotWipeOutWhatWasTyped() {
    FilledForm form = filled().choose("file", "curve.csv", FILE.replace("-18", "-17.9"));
    Document page = refused(form, form.send(technician, "do", "load"));
    assertThat(complaint(page, "file")).contains("Replace");
    Visitor.Answer replaced = form.set("replace", "yes").send(technician, "do", "load");
    assertThat(replaced.status()).isEqualTo(200);
    assertThat(typed(FilledForm.of(replaced.page(), "#curve"), "up")).endsWith("-17.9");
  }

  @Test
  void aDraftWaitsForItsWriterAndGoesWhenTheCurveIsKept() {
    String page = "/loops/K301-VX2/curve";
    assertThat(world.survey(2, "2026-02-01", "08:00", "XC-2").status()).isEqualTo(303);
    FilledForm form = FilledForm.of(technician.get(page).page(), "#curve");
    form.set("gap", "10", "2o").set("up", "-2", "x").set("sign", "magnitude").set("reason", "");
    assertThat(form.send(technician, "do", "draft").location()).isEqualTo(page);

    Document back = technician.get(page).page();
    FilledForm again = FilledForm.of(back, "#curve");
    assertThat(typed(again, "gap")).containsExactly("10", "2o");
    assertThat(typed(again, "up")).containsExactly("-2", "x");
    assertThat(again.values("sign")).containsExactly("magnitude");
    assertThat(back.select(".notice").text()).contains("draft");
    assertThat(rowComplaint(back, 2)).contains("is not a number");
    assertThat(technician.get("/calibrations").page().text()).contains("K301-VX2");
    Visitor other = world.app.as("planner");
    assertThat(other.get("/calibrations").page().select(".drafts")).isEmpty();

    assertThat(again.send(technician, "do", "discard").status()).isEqualTo(303);
    Document fresh = technician.get(page).page();
    assertThat(typed(FilledForm.of(fresh, "#curve"), "up")).containsExactly("");

    form.set("up", "").send(technician, "do", "draft");
    FilledForm good = FilledForm.of(technician.get(page).page(), "#curve");
    good.set("profile", "api670-2mm").set("gap-unit", "mil").set("gap", GAPS).set("up", VOLTS);
    good.set("sign", "negative").set("reason", "outage").set("on", "2026-02-21");
    assertThat(keep(good).location()).startsWith("/calibrations/");
    assertThat(technician.get("/calibrations").page().select(".drafts")).isEmpty();
  }

  @Test
  void aSessionThatRanOutDoesNotEatATypedCurve() {
    Visitor late = world.app.as("technician");
    FilledForm form = filled().set("csrf", late.token()).set("reason", "typed for an hour");
    late.loseSession();
    Visitor.Answer out = form.send(late, "do", "keep");
    assertThat(out.status()).isEqualTo(401);
    assertThat(out.page().select(".complaints").text()).contains("What you typed is kept");

    FilledForm door = FilledForm.of(out.page(), "main form");
    door.set("login", "technician").set("password", People.DEMO_PASSWORD);
    Visitor.Answer asked = door.send(late, "x", "");
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.page().text()).contains("nothing is stored yet").contains("typed for an hour");
    assertThat(head()).as("not without being asked").isEqualTo(before);

    FilledForm held = FilledForm.of(asked.page(), "main form");
    assertThat(held.values("up")).containsExactly(VOLTS);
    Visitor.Answer sent = held.send(late, "x", "");
    assertThat(sent.location()).startsWith("/calibrations/");
    assertThat(technician.get(sent.location()).page().text()).contains("typed for an hour");
  }

  @Test
  void aLoopWithoutKnownPartsSaysSo() {
    Document page = technician.get("/loops/K301-VX3/curve").page();
    assertThat(page.select(".notice.wrong").text()).contains("record a survey");
    assertThat(technician.get("/loops/NONE/curve").status()).isEqualTo(404);
  }

  @Test
  void whoMayOnlyReadGetsNoForm() {
    assertThat(world.app.as("viewer").get(PAGE).status()).isEqualTo(403);
  }

  @Test
  void complaintsAreTiedToTheirFields() {
    FilledForm form = filled().set("sign", "?").set("alloy", "X".repeat(61));
    Document page = refused(form, keep(form));
    for (Element link : page.select(".complaints a")) {
      assertThat(page.select(link.attr("href"))).as(link.attr("href")).hasSize(1);
    }
  }
}
