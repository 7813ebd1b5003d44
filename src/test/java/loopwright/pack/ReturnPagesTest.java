package loopwright.pack;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static loopwright.db.gen.Tables.CALIBRATION_STANDARD;
import static loopwright.db.gen.Tables.GAP_READING;
import static loopwright.db.gen.Tables.PACK_RETURN;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import loopwright.matching.PartKind;
import loopwright.register.FamilyId;
import loopwright.register.Stock;
import loopwright.standard.Certificate;
import loopwright.standard.CertifiedRange;
import loopwright.standard.Standard;
import loopwright.standard.StandardKind;
import loopwright.standard.Standards;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Filled sheets come back: report by row and cell, loop by loop, once. */
class ReturnPagesTest {
  private PackWorld world;
  private FilledSheet sheet;

  @BeforeEach
  void start() {
    world = new PackWorld();
    world.issue("first");
    sheet = FilledSheet.of(world.file("1.xlsx"));
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Visitor.Answer bring(String name, byte[] content) {
    Document page = world.technician.get(world.outage + "/returns").page();
    Visitor.Answer sent =
        FilledForm.of(page, "form[enctype]")
            .choose("file", name, content)
            .send(world.technician, "do", "look");
    return sent.status() == 303 ? world.technician.get(sent.location()) : sent;
  }

  private Document look(FilledSheet filled) {
    return bring("pack.xlsx", filled.workbook()).page();
  }

  private Visitor.Answer keep(Document plan) {
    return FilledForm.of(plan, "main form[method=post]").send(world.technician, "do", "keep");
  }

  private int rows(org.jooq.Table<?> table) {
    return world.shop.app.database().read(sql -> sql.fetchCount(table));
  }

  private static String fate(Document plan, String tag) {
    return plan.select("tr:has(a:contains(" + tag + ")) td[data-label=Fate]").text();
  }

  private static String told(Document plan, String tag) {
    return plan.select("tr:has(a:contains(" + tag + ")) td[data-label=What]").text();
  }

  private String back() {
    return world.technician.get(world.outage + "/returns").page().select("main").text();
  }

  @Test
  void aFilledLoopBecomesCalibrationAndGapVoltageAndTheRestStaysOpen() {
    Document plan = look(sheet.done("V-1"));
    assertThat(plan.select("section > p").text())
        .contains("Nothing is written yet. 1 loop would be kept; 2 loops not filled in.");
    assertThat(told(plan, "V-1")).contains("Done.", "Curve, as found: conforms.");
    assertThat(world.technician.get("/calibrations").body()).doesNotContain("T. Echnician");
    assertThat(keep(plan).status()).isEqualTo(303);
    assertThat(back()).contains("V-1 done", "As found and as left C-", "V-2", "V-3");
    assertThat(world.technician.get("/loops/V-1").page().select("h1 ~ p .verdict").first().text())
        .isEqualTo("matches");
    Document calibrations = world.technician.get("/calibrations").page();
    assertThat(calibrations.select("tbody tr:contains(V-1)").text()).contains("conforms");
    assertThat(rows(GAP_READING)).isEqualTo(1);
  }

  @Test
  void theSameFileTwiceChangesNothingAndOtherValuesOfADoneLoopAreRefused() {
    byte[] file = sheet.done("V-1").workbook();
    keep(bring("pack.xlsx", file).page());
    Document again = bring("copy of pack.xlsx", file).page();
    assertThat(fate(again, "V-1")).isEqualTo("kept before, nothing changes");
    assertThat(again.select("main form[method=post]")).isEmpty();
    assertThat(rows(CALIBRATION)).isEqualTo(1);
    Document other = look(sheet.set("V-1", Item.READING, "500 µm", Column.AS_FOUND, -4.06));
    assertThat(fate(other, "V-1")).isEqualTo("refused");
    assertThat(told(other, "V-1")).contains("came back as done already", "B-226");
  }

  @Test
  void aDifferingSerialBecomesASurveyThatIsJudged() {
    world.shop.part(PartKind.CABLE, "C-45", "4.5");
    sheet.done("V-1").set("V-1", Item.SERIAL, "path-1", Column.AS_FOUND, "C-45");
    Document plan = look(sheet);
    assertThat(told(plan, "V-1"))
        .contains("Survey, as found: path-1 C-45; the loop would be judged refused.");
    assertThat(keep(plan).status()).isEqualTo(303);
    Document loop = world.technician.get("/loops/V-1").page();
    assertThat(loop.select("h1 ~ p .verdict").first().text()).isEqualTo("refused");
    assertThat(loop.select("ol.story").text()).contains("survey");
    Document unknown =
        look(
            FilledSheet.of(world.file("1.xlsx"))
                .done("V-2")
                .set("V-2", Item.SERIAL, "driver", Column.AS_LEFT, "D-99")
                .set("V-2", Item.DONE_BY, Column.AS_LEFT, "T. Echnician")
                .set("V-2", Item.MEASURED_AT, Column.AS_LEFT, "2026-02-28 16:00"));
    assertThat(told(unknown, "V-2"))
        .contains(
            "No part in the register is called D-99",
            "row " + sheet.line("V-2", Item.SERIAL, "driver") + ", K");
  }

  @Test
  void asFoundAndAsLeftWithAnExchangeBetween() {
    world.shop.part(PartKind.PROBE, "P-9", "1");
    sheet
        .done("V-1")
        .set("V-1", Item.NOTHING_TOUCHED, Column.AS_LEFT, null)
        .set("V-1", Item.SERIAL, "probe", Column.AS_LEFT, "P-9")
        .set("V-1", Item.DONE_BY, Column.AS_LEFT, "T. Echnician")
        .set("V-1", Item.MEASURED_AT, Column.AS_LEFT, "2026-03-01 09:00")
        .curve("V-1", Column.AS_LEFT, -2.0, 7.874);
    assertThat(keep(look(sheet)).status()).isEqualTo(303);
    Document loop = world.technician.get("/loops/V-1").page();
    assertThat(loop.select("h1 ~ p .verdict").first().text()).isEqualTo("matches");
    assertThat(loop.text()).contains("P-9");
    assertThat(putIn())
        .as("an exchange that a sheet tells is use")
        .containsExactly("probe 1.0 m: 1");
    assertThat(world.shop.survey("V-1", "2026-03-01", "P-9", "C-2", "D-1").status()).isEqualTo(303);
    assertThat(putIn()).as("from another loop, not from stock").containsExactly("probe 1.0 m: 1");
    assertThat(back()).contains("As found C-", "Survey, as left: P-9; judged");
  }

  private List<String> putIn() {
    return world
        .shop
        .app
        .database()
        .read(
            sql ->
                new Stock()
                        .putIn(sql, List.of(new FamilyId(1)), Instant.parse("2026-02-25T00:00:00Z"))
                        .entrySet()
                        .stream()
                        .map(
                            each ->
                                each.getKey().kind().word()
                                    + " "
                                    + each.getKey().length().inMetres()
                                    + ": "
                                    + each.getValue())
                        .toList());
  }

  @Test
  void cellsThatCantBeTakenAreToldByRowAndColumnAndTheLoopIsLeftOutWhole() {
    sheet
        .done("V-1")
        .done("V-2")
        .set("V-1", Item.READING, "250 µm", Column.AS_FOUND, new FilledSheet.Formula("1+1"))
        .set("V-1", Item.READING, "500 µm", Column.AS_FOUND, "-4.1 V")
        .set("V-1", Item.READING, "750 µm", Column.AS_FOUND, LocalDate.of(2026, 6, 4))
        .set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "03/08/2026")
        .set("V-1", Item.OUTCOME, Column.AS_LEFT, "finished")
        .set("V-1", Item.REASON, Column.AS_FOUND, "wrong column");
    Document plan = look(sheet);
    assertThat(fate(plan, "V-1")).isEqualTo("refused");
    assertThat(told(plan, "V-1"))
        .contains(
            "row " + sheet.line("V-1", Item.READING, "250 µm") + ", I A formula stands here",
            "'-4.1 V' is text where a number belongs",
            "The spreadsheet made the date 2026-06-04 of what was typed",
            "'03/08/2026' is no day that reads the same everywhere",
            "'finished' is none of done, not done, failed",
            "Nothing belongs here");
    assertThat(fate(plan, "V-2")).isEqualTo("would be kept");
    assertThat(keep(plan).status()).isEqualTo(303);
    assertThat(back()).contains("V-2 done").doesNotContain("V-1 done");
    assertThat(rows(CALIBRATION)).isEqualTo(1);
  }

  @Test
  void daysInALocalFormatAreAskedBackAndDateCellsAreTaken() {
    sheet
        .done("V-1")
        .done("V-2")
        .set("V-3", Item.OUTCOME, Column.AS_LEFT, "not done")
        .set("V-3", Item.REASON, Column.AS_LEFT, "no scaffold")
        .set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "27.02.2026 14:30")
        .set("V-1", Item.REASON, Column.AS_LEFT, "x".repeat(2001))
        .set("V-2", Item.MEASURED_AT, Column.AS_FOUND, LocalDate.of(2026, 2, 28))
        .set("V-3", Item.MEASURED_AT, Column.AS_FOUND, 46081.604);
    Document plan = look(sheet);
    assertThat(told(plan, "V-1"))
        .contains(
            "row " + sheet.line("V-1", Item.MEASURED_AT, "") + ", I '27.02.2026 14:30' is no day",
            "row " + sheet.line("V-1", Item.REASON, "") + ", K",
            "2000");
    assertThat(fate(plan, "V-2")).as("a cell that holds a day").isEqualTo("would be kept");
    assertThat(told(plan, "V-3"))
        .as("a bare number, its format lost")
        .contains("'46081.604' is no day");
    sheet.set("V-1", Item.REASON, Column.AS_LEFT, null);
    assertThat(
            told(
                look(sheet.set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "2025-10-26 02:30")),
                "V-1"))
        .as("the hour that came twice")
        .contains("showed 02:30 twice");
  }

  private void standard(String code, StandardKind kind, String unit, String issued) {
    Standards standards = new Standards();
    LocalDate on = LocalDate.parse(issued);
    world.shop.app.write(
        tx ->
            standards.add(
                tx, new Standard(0, code, kind, "Nordling", "M4", code, "", List.of(), List.of())));
    CertifiedRange range =
        new CertifiedRange(
            1,
            Reported.read("0", Unit.named(unit).orElseThrow()).orElseThrow(),
            Reported.read("2500", Unit.named(unit).orElseThrow()).orElseThrow(),
            Reported.read("0", Unit.named(unit).orElseThrow()).orElseThrow(),
            Reported.read("0.01", Unit.named(unit).orElseThrow()).orElseThrow(),
            Optional.empty(),
            Optional.empty());
    world.shop.app.write(
        tx ->
            standards.add(
                tx,
                standards.coded(tx.sql(), code),
                new Certificate(
                    0,
                    "K-" + issued,
                    "Lab",
                    on,
                    on.plusYears(1),
                    BigDecimal.valueOf(2),
                    List.of(range),
                    ""),
                LocalDate.parse("2026-03-01")));
  }

  @Test
  void standardsAreFoundInTheRegisterAndOtherNamesAreAskedBackThenKeptAsTyped() {
    standard("DVM-2", StandardKind.VOLTMETER, "V", "2026-01-05");
    standard("DVM-3", StandardKind.VOLTMETER, "V", "2026-01-05");
    standard("MIC-1", StandardKind.MICROMETER, "µm", "2026-03-01");
    sheet
        .done("V-1")
        .set("V-1", Item.STANDARDS, Column.AS_FOUND, "dvm-2; MIC-1, BORROWED-7")
        .done("V-2")
        .set("V-2", Item.STANDARDS, Column.AS_FOUND, "DVM-2, DVM-3")
        .set("V-3", Item.OUTCOME, Column.AS_LEFT, "not done")
        .set("V-3", Item.REASON, Column.AS_LEFT, "no scaffold")
        .set("V-3", Item.STANDARDS, Column.AS_LEFT, "DVM-2");
    Document plan = look(sheet);
    assertThat(fate(plan, "V-1")).isEqualTo("asks something first");
    assertThat(told(plan, "V-1"))
        .contains(
            "Measured with DVM-2.",
            "Standards as typed, not in the register: MIC-1, BORROWED-7.",
            "MIC-1 had no certificate on 2026-02-28",
            "There is no reference standard BORROWED-7 in the register. It would be kept as typed");
    assertThat(told(plan, "V-2"))
        .contains("row " + sheet.line("V-2", Item.STANDARDS, "") + ", I Two of one sort");
    assertThat(told(plan, "V-3"))
        .contains("tandards are named for V-3 as left, but no reading stands there");
    Visitor.Answer kept =
        FilledForm.of(plan, "main form[method=post]")
            .set("confirmed", "yes")
            .send(world.technician, "do", "keep");
    assertThat(kept.status()).isEqualTo(303);
    assertThat(back()).contains("not in the register: MIC-1, BORROWED-7");
    String number =
        world
            .technician
            .get(world.outage + "/returns")
            .page()
            .select("main a[href^=/calibrations/C]")
            .text();
    assertThat(world.technician.get("/calibrations/" + number).page().text())
        .contains("DVM-2", "K-2026-01-05 of Lab");
    assertThat(rows(CALIBRATION_STANDARD)).isEqualTo(1);
  }

  private FilledSheet bypass(String loop, String... values) {
    BypassPart[] parts = BypassPart.values();
    for (int i = 0; i < values.length; i++) {
      sheet.set(loop, parts[i].item(), parts[i].word(), Column.AS_LEFT, values[i]);
    }
    return sheet;
  }

  @Test
  void aBypassComesBackWithItsLoopAndStaysOpenUntilASecondPersonProvesIt() {
    sheet.done("V-1").done("V-2");
    bypass(
        "V-1",
        "BP-77",
        "trip on radial vibration",
        "1oo1",
        "A. Uthority",
        "O. Wner",
        "2026-02-28 08:00",
        "2026-02-28 20:00",
        "2026-02-28 16:00",
        "demo engineer");
    bypass("V-2", "BP-78", "", "1oo1", "A. Uthority", "O. Wner", "28/02/2026", "2026-02-28 20:00");
    Document plan = look(sheet);
    assertThat(told(plan, "V-1"))
        .contains("Bypass BP-77: goes into the log; off since 2026-02-28 16:00, to be proved");
    assertThat(told(plan, "V-2"))
        .contains(
            "row "
                + sheet.line("V-2", Item.BYPASS, "function inhibited")
                + ", K A bypass of V-2 is written down, but nothing stands for 'function inhibited'",
            "'28/02/2026' is no day");
    assertThat(keep(plan).status()).isEqualTo(303);
    assertThat(back()).contains("Bypass BP-77 is BY-1 in the log, taken off, to be proved.");
    Visitor engineer = world.shop.app.as("engineer");
    assertThat(engineer.get("/").page().select("tbody tr:contains(BY-1)").text())
        .contains("OVERDUE", "A second person proves that it is off.");
    assertThat(engineer.get("/bypasses/BY-1").page().text())
        .contains(
            "Removed Demo Engineer, 2026-02-28 16:00",
            "Taken off by demo engineer, as pack.xlsx says.");
    assertThat(engineer.post("/bypasses/BY-1/prove", "note", "seen").body())
        .as("whom the sheet names as the one who took it off")
        .contains("Y-106");
    world.technician.get("/bypasses/BY-1");
    assertThat(world.technician.post("/bypasses/BY-1/prove", "note", "seen").body())
        .as("who brought that sheet")
        .contains("Y-106");
    world.planner.get("/bypasses/BY-1");
    assertThat(world.planner.post("/bypasses/BY-1/prove", "note", "seen").status()).isEqualTo(303);
    bypass("V-2", "BP-78", "alarm", "1oo1", "A. Uthority", "O. Wner", "2026-02-28 08:00");
    assertThat(keep(look(sheet)).status()).isEqualTo(303);
    assertThat(engineer.get("/").page().select("tbody tr:contains(BY-2)").text())
        .contains("Have it taken off under the site's procedure");
  }

  @Test
  void aBypassThatIsInTheLogAlreadyStaysAsItWasEntered() {
    world.technician.get("/bypasses/new?loop=V-1");
    assertThat(
            world
                .technician
                .post(
                    "/bypasses/new",
                    "loop",
                    "V-1",
                    "site-number",
                    "BP-77",
                    "inhibited",
                    "trip",
                    "vote",
                    "1oo1",
                    "authoriser",
                    "A. Uthority",
                    "owner",
                    "O. Wner",
                    "on",
                    "2026-02-28",
                    "time",
                    "08:00",
                    "until",
                    "2026-03-02",
                    "until-time",
                    "20:00")
                .location())
        .isEqualTo("/bypasses/BY-1");
    sheet.done("V-1");
    bypass(
        "V-1",
        "bp-77",
        "trip",
        "1oo2",
        "A. Uthority",
        "O. Wner",
        "2026-02-28 08:00",
        "2026-03-02 20:00");
    Document plan = look(sheet);
    assertThat(told(plan, "V-1"))
        .contains("in the log already as BY-1, which stays as it was entered although the sheet");
    bypass(
        "V-1",
        "bp-77",
        "trip",
        "1oo2",
        "A. Uthority",
        "O. Wner",
        "2026-02-28 08:00",
        "2026-03-02 20:00",
        "2026-02-28 07:59",
        "T. Echnician");
    assertThat(told(look(sheet), "V-1")).contains("It would be off before it was on");
    sheet.set("V-1", Item.BYPASS_TIME, "off since", Column.AS_LEFT, "2026-02-28 16:00");
    assertThat(keep(look(sheet)).status()).isEqualTo(303);
    assertThat(world.technician.get("/bypasses/BY-1").page().text())
        .contains("1oo1", "removed, not proved", "Taken off by T. Echnician")
        .doesNotContain("1oo2");
    assertThat(world.technician.get("/bypasses/BY-2").status()).isEqualTo(404);
  }

  @Test
  void whatWasReadWhereNoCurveCouldBeTakenIsKeptBesideTheReason() {
    sheet
        .done("V-1")
        .set("V-1", Item.OUTCOME, Column.AS_LEFT, "failed")
        .set("V-1", Item.REASON, Column.AS_LEFT, "probe dead")
        .set("V-1", Item.NO_CURVE, Column.AS_FOUND, "stuck at the rail");
    for (int gap = 750; gap <= 2250; gap += 250) {
      sheet.set("V-1", Item.READING, gap + " µm", Column.AS_FOUND, null);
    }
    Document plan = look(sheet);
    assertThat(told(plan, "V-1")).contains("No curve, as found: stuck at the rail");
    assertThat(keep(plan).status()).isEqualTo(303);
    assertThat(rows(CALIBRATION_READING)).isEqualTo(2);
  }

  @Test
  void aSheetOfAnotherRegisterOrRevisionOrWithEditedHeadingsIsRefused() {
    sheet.done("V-1");
    Document foreign =
        look(
            FilledSheet.of(sheet.workbook()).everywhere(Column.PACK, "WP-00000000-O1-R1-00000000"));
    assertThat(foreign.text()).contains("names a pack of another register", "B-204");
    assertThat(foreign.select("main form[method=post]")).isEmpty();
    Document edited = look(FilledSheet.of(sheet.workbook()).heading(Column.AS_FOUND, "Found (V)"));
    assertThat(edited.text()).contains("The heading is 'Found (V)' where 'as found' stood");
    assertThat(bring("pack.xlsx", "no workbook".getBytes(StandardCharsets.UTF_8)).page().text())
        .contains("The first row must hold the headings");
    world.shop.part(PartKind.CABLE, "C-44", "4");
    assertThat(world.shop.survey("V-1", "2026-03-01", "P-1", "C-44", "D-1").status())
        .isEqualTo(303);
    world.issue("cable exchanged");
    Document old = look(sheet.done("V-2"));
    assertThat(told(old, "V-1")).contains("revision 2 changed its parts", "B-207");
    assertThat(fate(old, "V-2")).as("the same on both revisions").isEqualTo("would be kept");
  }

  @Test
  void aLoopTakenOutMeanwhileIsRefusedWithWhoAndWhy() {
    world.leaveOut(world.outage, "V-1");
    Document plan = look(sheet.done("V-1"));
    assertThat(told(plan, "V-1"))
        .contains("is not in the pack any more: Demo Planner took it out: because");
  }

  @Test
  void csvSavedWithSemicolonsAndCommasComesBackToo() {
    sheet.done("V-1").set("V-2", Item.OUTCOME, Column.AS_LEFT, "not done");
    Document plan = bring("pack.csv", sheet.csv(';', ',')).page();
    assertThat(fate(plan, "V-1")).isEqualTo("would be kept");
    assertThat(told(plan, "V-2")).contains("Say why V-2 is not done");
    assertThat(keep(plan).status()).isEqualTo(303);
    assertThat(back()).contains("V-1 done");
    assertThat(fate(look(sheet), "V-1"))
        .as("the same values in another kind of file")
        .isEqualTo("kept before, nothing changes");
  }

  @Test
  void whatIsAskedBackIsKeptOnlyWhenSomebodySaysSo() {
    sheet.done("V-1");
    for (int gap = 1750; gap <= 2250; gap += 250) {
      sheet.set("V-1", Item.READING, gap + " µm", Column.AS_FOUND, -23.9 - gap / 10000.0);
    }
    Document plan = look(sheet);
    assertThat(fate(plan, "V-1")).isEqualTo("asks something first");
    Visitor.Answer refused = keep(plan);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select(".complaints").text()).contains("B-229");
    assertThat(
            FilledForm.of(refused.page(), "main form[method=post]")
                .set("confirmed", "yes")
                .send(world.technician, "do", "keep")
                .status())
        .isEqualTo(303);
    assertThat(back()).contains("V-1 done");
  }

  @Test
  void whatIsNotDoneOrFailedIsSaidWithItsReason() {
    Document page = world.technician.get(world.outage + "/returns").page();
    String loop = page.select("input[name=loop][aria-label=V-3]").attr("value");
    assertThat(
            world
                .technician
                .post(world.outage + "/say", "loop", loop, "outcome", "not done", "reason", "")
                .body())
        .contains("the reason");
    assertThat(
            world
                .technician
                .post(
                    world.outage + "/say",
                    "loop",
                    loop,
                    "outcome",
                    "not done",
                    "reason",
                    "no scaffold")
                .status())
        .isEqualTo(303);
    assertThat(back()).contains("V-3 not done no scaffold");
    assertThat(
            world
                .technician
                .post(
                    world.outage + "/say",
                    "loop",
                    loop,
                    "outcome",
                    "not done",
                    "reason",
                    "no scaffold")
                .status())
        .as("a double click")
        .isEqualTo(303);
    assertThat(rows(PACK_RETURN)).isEqualTo(1);
    assertThat(
            world
                .technician
                .post(world.outage + "/say", "loop", loop, "outcome", "failed", "reason", "dead")
                .body())
        .as("on a page that somebody else's word made old")
        .contains("V-3 came back meanwhile, as not done");
    String seen =
        world
            .technician
            .get(world.outage + "/returns")
            .page()
            .select("input[name=loop][aria-label=V-3]")
            .attr("value");
    assertThat(
            world
                .technician
                .post(world.outage + "/say", "loop", seen, "outcome", "failed", "reason", "dead")
                .status())
        .isEqualTo(303);
    assertThat(
            world
                .shop
                .app
                .as("viewer")
                .post(world.outage + "/say", "loop", loop, "outcome", "failed", "reason", "x")
                .status())
        .isEqualTo(403);
  }
}
