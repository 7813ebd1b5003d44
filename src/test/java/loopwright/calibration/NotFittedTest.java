package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.IMPACT_REVIEW;
import static loopwright.db.gen.Tables.POINT;
import static org.assertj.core.api.Assertions.assertThat;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.IntStream;
import loopwright.people.People;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Curves of sets on a bench and with a part standing in. Curves here are synthetic. */
class NotFittedTest {
  private static Shop shop;
  private static Visitor technician;

  /** V-1 holds set 1, V-2 is of another alloy; V-3 and V-4 wait for sets. Today is 2026-03-01. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    for (int i = 1; i <= 4; i++) {
      String alloy = i == 2 ? "17-4PH" : "4140";
      long point = shop.point("V-" + i);
      shop.app.write(
          tx ->
              tx.sql()
                  .update(POINT)
                  .set(POINT.SHAFT_ALLOY, alloy)
                  .where(POINT.ID.eq(point))
                  .execute());
      shop.set(i);
      shop.set(10 + i);
    }
    survey("V-1", "2026-01-20", "1");
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static void survey(String tag, String on, String n) {
    assertThat(shop.survey(tag, on, "P-" + n, "C-" + n, "D-" + n).status()).isEqualTo(303);
  }

  private static long number(String serial) {
    return shop.app
        .database()
        .read(sql -> shop.register.labelled(sql, serial))
        .get(0)
        .id()
        .number();
  }

  private static String set(String probe, String cable, String driver) {
    return "set="
        + URLEncoder.encode(
            "probe:%s/path-1:%s/driver:%s".formatted(number(probe), number(cable), number(driver)),
            StandardCharsets.UTF_8);
  }

  private static FilledForm curve(String page, String stage, String on) {
    return FilledForm.of(technician.get(page).page(), "#curve")
        .set("profile", "api670-2mm")
        .set("gap-unit", "mil")
        .set("gap", IntStream.rangeClosed(1, 9).mapToObj(i -> "" + 10 * i).toArray(String[]::new))
        .set(
            "up",
            IntStream.rangeClosed(1, 9)
                .mapToObj(i -> String.format(Locale.ROOT, "-%d.00", 2 * i))
                .toArray(String[]::new))
        .set("stage", stage)
        .set("alloy", "4140")
        .set("on", on)
        .set("time", "09:00")
        .set("reason", "bench day");
  }

  private static String kept(FilledForm form) {
    Visitor.Answer answer = form.send(technician, "do", "keep");
    assertThat(answer.status())
        .as(answer.page().select(".complaint, .complaints").text())
        .isEqualTo(303);
    return answer.location();
  }

  private static String finding(String tag) {
    return technician.get("/loops/" + tag).page().select("li, tr, p").stream()
        .map(each -> each.text())
        .filter(text -> text.contains("latest as-left") || text.contains("No as-left"))
        .findFirst()
        .orElse("");
  }

  @Test
  void aSetMeasuredOnTheBenchCountsWhereItGetsFitted() {
    String page = "/bench/curve?" + set("P-3", "C-3", "D-3");
    assertThat(technician.get(page).page().text()).contains("On the bench", "P-3", "C-3", "D-3");
    String record = kept(curve(page, "as left", "2026-02-02"));
    Document shown = technician.get(record).page();
    assertThat(shown.text()).contains("Taken on the bench").doesNotContain("are fitted now at");
    survey("V-3", "2026-02-10", "3");
    assertThat(finding("V-3")).contains("before they were fitted here").contains("conforms");
    assertThat(technician.get(record).page().text()).contains("are fitted now at V-3");
    assertThat(technician.get("/loops/V-3").page().text()).contains(record.substring(14), "bench");
    // the same curve again is the same record
    assertThat(kept(curve(page, "as left", "2026-02-02").set("confirmed", "yes")))
        .isEqualTo(record);
    survey("V-3", "2026-02-12", "13");
    assertThat(finding("V-3")).doesNotContain("conforms");
    survey("V-3", "2026-02-14", "3");
    assertThat(finding("V-3")).as("out and back again").contains("came back");
  }

  @Test
  void aBenchCurveOnAnotherAlloyDoesNotCount() {
    kept(curve("/bench/curve?" + set("P-2", "C-2", "D-2"), "as left", "2026-02-02"));
    survey("V-2", "2026-02-10", "2");
    assertThat(finding("V-2")).contains("its target was of 4140, the shaft is of 17-4PH");
  }

  @Test
  void aCurveWithAShopCableStandingInIsNeverTheLoopsOwn() {
    String own = kept(curve("/loops/V-1/curve", "as left", "2026-02-01"));
    assertThat(finding("V-1")).contains("of 2026-02-01").contains("conforms");
    Visitor.Answer chosen = technician.get("/loops/V-1/curve/stand-in?slot=path-1&serial=c-11");
    assertThat(chosen.status()).isEqualTo(303);
    String record = kept(curve(chosen.location(), "as left", "2026-02-20"));
    assertThat(technician.get(record).page().text())
        .contains("C-11 standing in for", "never counts as its as left");
    assertThat(finding("V-1")).contains("of 2026-02-01").contains("conforms");
    Document loop = technician.get("/loops/V-1").page();
    assertThat(loop.text()).contains(own.substring(14), record.substring(14), "part stood in");
    // an as-found out of tolerance with a stood-in part says nothing of the loop's protection
    kept(
        curve(chosen.location(), "as found", "2026-02-21")
            .set("up", "-2", "-4", "-5", "-5.5", "-6", "-6.2", "-6.4", "-6.5", "-6.6"));
    int reviews = shop.app.database().read(sql -> sql.fetchCount(IMPACT_REVIEW));
    assertThat(reviews).isZero();
    assertThat(finding("V-1")).contains("conforms");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      no such part      | /loops/V-1/curve/stand-in?slot=path-1&serial=nothing | There is no part nothing
      of another kind   | /loops/V-1/curve/stand-in?slot=path-1&serial=P-12    | can't stand in the place
      no set            | /bench/curve                                         | names no set of parts
      half a set        | /bench/curve?set=probe:1                             | names no set of parts
      unknown numbers   | /bench/curve?set=probe:99998/driver:99999            | There is no part 99998
      """)
  void whatCannotBeMeasuredIsToldBeforeAnythingIsTyped(String name, String page, String told) {
    Visitor.Answer answer = technician.get(page);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().text()).contains(told);
  }

  @Test
  void badInputOfABenchCurveIsAskedBack() {
    String page = "/bench/curve?" + set("P-14", "C-14", "D-14");
    Visitor.Answer without =
        curve(page, "as left", "2026-02-02").set("alloy", "").send(technician, "do", "keep");
    assertThat(without.status()).isEqualTo(422);
    assertThat(without.page().select("#alloy-about").text()).contains("Name the alloy");
    String fitted = "/bench/curve?" + set("P-1", "C-14", "D-14");
    Visitor.Answer asked = curve(fitted, "as left", "2026-02-02").send(technician, "do", "keep");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.page().text()).contains("P-1", "was fitted at V-1 then");
    kept(curve(fitted, "as left", "2026-02-02").set("confirmed", "yes"));
    String same = "/loops/V-1/curve?" + set("P-1", "C-1", "D-1");
    assertThat(curve(same, "as left", "2026-02-02").send(technician, "do", "keep").page().text())
        .contains("exactly the parts fitted at V-1");
  }

  @Test
  void aDraftWaitsOnTheList() {
    String page = "/bench/curve?" + set("P-12", "C-12", "D-12");
    curve(page, "as left", "2026-02-02").send(technician, "do", "draft");
    assertThat(technician.get("/calibrations").page().select(".drafts a").eachAttr("href"))
        .contains(page);
    assertThat(technician.get(page).page().text()).contains("This is your draft");
    curve(page, "as left", "2026-02-02").send(technician, "do", "discard");
    assertThat(technician.get(page).page().text()).doesNotContain("This is your draft");
  }

  @Test
  void itIsSignedAndPrintedAsWhatItIs() throws Exception {
    Visitor engineer = shop.app.as("engineer");
    String person =
        engineer.get("/authorisations").page().select("select[name=person] option").stream()
            .filter(option -> option.text().equals("Demo Technician"))
            .findFirst()
            .orElseThrow()
            .val();
    engineer.post(
        "/authorisations",
        "person",
        person,
        "scope",
        "sign",
        "from",
        "2026-01-01",
        "until",
        "2027-01-01",
        "basis",
        "examined");
    String record =
        kept(curve("/bench/curve?" + set("P-4", "C-4", "D-4"), "as left", "2026-02-03"));
    assertThat(technician.post(record + "/sign", "password", People.DEMO_PASSWORD).location())
        .isEqualTo(record);
    byte[] pdf = technician.bytes(record + "/certificate.pdf");
    try (PDDocument paper = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(paper))
          .contains("on the bench", "P-4", "C-4", "D-4", "Demo Technician");
    }
    int rows =
        shop.app.database().read(sql -> sql.fetchCount(CALIBRATION, CALIBRATION.SETUP.eq("bench")));
    assertThat(rows).isPositive();
  }

  /** From the scan check, the way a technician comes. */
  @Test
  void theScanCheckLeadsToBoth() {
    String scanned =
        "/scan?part=%s&part=%s&part=%s".formatted(number("P-14"), number("C-14"), number("D-14"));
    assertThat(technician.get(scanned).page().select("a[href^=/bench/curve]").eachAttr("href"))
        .containsExactly("/bench/curve?" + set("P-14", "C-14", "D-14"));
    assertThat(technician.get(scanned + "&loop=V-1").page().select("a[href^=/loops/V-1/curve]"))
        .hasSize(1);
  }
}
