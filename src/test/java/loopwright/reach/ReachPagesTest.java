package loopwright.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import loopwright.journal.JournalStore;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How far a standard's error reaches, over HTTP. Curves here are synthetic. */
class ReachPagesTest {
  private static final String CURVE = "/loops/V-1/curve";
  private static final String TIME = "?from=2026-01-05&until=2026-03-01";
  private static Shop shop;
  private static Visitor technician;
  private static String near;
  private static String good;

  /** One curve 2.3 % high, which conforms; one on the line. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-01-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
    standard("MIC-1", "spindle micrometer", "µm", "2500");
    standard("DVM-1", "voltmeter", "V", "30");
    standard("THERM-1", "other", "", "");
    near = kept(204.6, "2026-02-01", "MIC-1", "DVM-1");
    good = kept(200, "2026-02-02", "MIC-1", "DVM-1");
    kept(200, "2026-01-25", "DVM-1");
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static void standard(String code, String kind, String unit, String high) {
    technician.post(
        "/standards", "code", code, "kind", kind, "maker", "A", "model", "B", "serial", code);
    if (!unit.isEmpty()) {
      Visitor.Answer answer =
          technician.post(
              "/standards/" + code + "/certificate",
              "number",
              "K-1",
              "issuer",
              "Lab",
              "issued",
              "2026-01-05",
              "due",
              "2027-01-05",
              "factor",
              "2",
              "unit",
              unit,
              "low",
              "0",
              "high",
              high,
              "uncertainty",
              "0.01");
      assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
    }
  }

  private static String kept(double perMil, String on, String... standards) {
    Visitor.Answer answer =
        FilledForm.of(technician.get(CURVE).page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set(
                "gap",
                IntStream.rangeClosed(1, 9).mapToObj(i -> "" + 10 * i).toArray(String[]::new))
            .set(
                "up",
                IntStream.rangeClosed(1, 9)
                    .mapToObj(i -> String.format(Locale.ROOT, "%.3f", -perMil * i / 100))
                    .toArray(String[]::new))
            .set("standard", standards)
            .set("on", on)
            .set("time", "08:00")
            .set("confirmed", "yes")
            .set("reason", "outage")
            .send(technician, "do", "keep");
    assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
    return answer.location().substring("/calibrations/".length());
  }

  private static Document reach(String standard, String query) {
    return technician.get("/standards/" + standard + "/reach" + TIME + query).page();
  }

  @Test
  void whatAScaleErrorOfTheMicrometerTouchedFlipsFirst() {
    long before = shop.app.database().read(JournalStore::head);
    // shown 0.4 % too much: true gaps are 0.996 of those typed, slopes 1/0.996 of those kept: 204.6
    // becomes 205.4 mV/mil, 2.7 % off, and the deviation over 80 mil 40·0.996·0.0271 = 1.08 mil
    Document page = reach("MIC-1", "&unit=%C2%B5m&percent=0.4");
    assertThat(page.select("h2").text()).isEqualTo("2 touched, 1 of them with another verdict");
    List<String> rows = page.select("tbody tr:has(a)").eachText();
    assertThat(rows).hasSize(2);
    assertThat(rows.get(0))
        .startsWith(near + " · flips")
        .contains("does not conform", "straight line reaches +1.08 mil");
    assertThat(rows.get(0)).contains("8.055 mV/µm → 8.087 mV/µm", "23.4 µm → 27.4 µm");
    assertThat(rows.get(1)).startsWith(good).contains("conforms conforms");
    assertThat(shop.app.database().read(JournalStore::head)).as("a view only").isEqualTo(before);
  }

  @Test
  void anOffsetOfTheVoltmeterInOneRangeTouchesOnlyReadingsThere() {
    // 0.1 V too much from 15 V on: −16 and −18 V were −15.9 and −17.9; only one increment changes
    Document page = reach("DVM-1", "&unit=V&low=15&high=30&offset=0.1&percent=");
    assertThat(page.select("h2").text()).startsWith("3 touched");
    assertThat(page.select("tbody tr:contains(" + good + ")").text())
        .contains("7.874 mV/µm → 7.825 mV/µm");
  }

  @Test
  void itBeginsWithTheNewestCertificate() {
    Document page = technician.get("/standards/MIC-1/reach").page();
    assertThat(page.select("input[name=from]").val()).isEqualTo("2026-01-05");
    assertThat(page.select("input[name=until]").val()).isEqualTo("2026-03-02");
    assertThat(page.select("h2")).isEmpty();
    assertThat(technician.get("/standards/MIC-1").page().select("a[href$=/reach]")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "MIC-1, '', Give at least one range with its error",
    "MIC-1, '&percent=much', is not one number",
    "MIC-1, '&percent=60', an error of 60 % can't be",
    "MIC-1, '&low=5&offset=1', give both ends",
    "MIC-1, '&low=500&high=100&offset=1', Give the smaller end first",
    "DVM-1, '&low=0&high=9&offset=1&low=5&high=12&offset=2', Ranges 1 and 2 overlap",
    "THERM-1, '&offset=1', so no result follows from its error"
  })
  void whatCannotBeIsSaid(String standard, String query, String said) {
    String unit = standard.equals("DVM-1") ? "&unit=V" : "&unit=%C2%B5m";
    Visitor.Answer answer =
        technician.get("/standards/" + standard + "/reach" + TIME + unit + query);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text()).contains(said);
  }

  /** MIC-9 was calibrated against MIC-R while that showed too much, MIC-8 only checked. */
  @Test
  void itReachesThroughWorkingStandardsAndOpensReviewsOnce() {
    standard("MIC-R", "spindle micrometer", "µm", "2500");
    standard("MIC-9", "spindle micrometer", "µm", "2500");
    standard("MIC-8", "spindle micrometer", "µm", "2500");
    certified("MIC-9", "K-2", "2026-02-03", "MIC-R");
    technician.post(
        "/standards/MIC-8/event",
        "kind",
        "check passed",
        "on",
        "2026-02-03",
        "note",
        "agreed",
        "against",
        "MIC-R");
    final String before = kept(204.6, "2026-02-02", "MIC-9");
    String turned = kept(204.6, "2026-02-10", "MIC-9");
    String checked = kept(204.6, "2026-02-11", "MIC-8");
    assertThat(technician.get("/standards/MIC-9").page().text()).contains("· against MIC-R");
    assertThat(technician.get("/standards/MIC-R").page().text())
        .contains("MIC-9 was calibrated against it on 2026-02-03")
        .contains("MIC-8 was checked against it on 2026-02-03");
    String query = TIME + "&unit=%C2%B5m&percent=0.4";
    Visitor engineer = shop.app.as("engineer");
    Document page = engineer.get("/standards/MIC-R/reach" + query).page();
    assertThat(page.select("h2").text()).isEqualTo("2 touched, 1 of them with another verdict");
    List<String> rows = page.select("tbody tr:has(a)").eachText();
    assertThat(rows.get(0))
        .startsWith(turned + " · flips")
        .endsWith("MIC-R → MIC-9 (certificate K-2)")
        .doesNotContain(before);
    assertThat(rows.get(1)).startsWith(checked).contains("unknown", "only checked against MIC-R");
    assertThat(technician.get("/standards/MIC-R/reach" + query).page().select("button"))
        .as("only who decides opens reviews")
        .noneMatch(button -> button.text().contains("Open impact reviews"));
    FilledForm form = FilledForm.of(page, "form[method=post][action$=/reach]");
    assertThat(form.send(engineer, "do", "open").location()).isEqualTo("/impact");
    Document reviews = engineer.get("/impact").page();
    assertThat(reviews.text()).contains("1 impact reviews opened.", turned);
    Document review =
        engineer.get(reviews.select("a[href^=/impact/I-]").first().attr("href")).page();
    assertThat(review.text())
        .contains("MIC-R was wrong: 0 to 2500 µm: 0 µm and +0.4 % of the reading.")
        .contains("It came to this record by MIC-R → MIC-9 (certificate K-2).")
        .contains("Kept as: conforms. Without that error: does not conform.")
        .contains("the error still in it");
    assertThat(engineer.get("/").page().text()).contains("MIC-R was found wrong");
    form.send(engineer, "do", "open");
    assertThat(engineer.get("/impact").page().text())
        .contains("0 impact reviews opened. 1 were opened before.");
    assertThat(engineer.get("/impact").page().select("tbody tr")).hasSize(1);
  }

  private static void certified(String code, String number, String on, String against) {
    Visitor.Answer answer =
        technician.post(
            "/standards/" + code + "/certificate",
            "number",
            number,
            "issuer",
            "own shop",
            "issued",
            on,
            "due",
            "2027-01-05",
            "factor",
            "2",
            "unit",
            "µm",
            "low",
            "0",
            "high",
            "2500",
            "uncertainty",
            "0.01",
            "against",
            against);
    assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
  }

  @Test
  void whatSetsNoGapIsListedWithWhatRestsOnIt() {
    standard("BLOCKS", "other", "", "");
    technician.post(
        "/standards/BLOCKS/certificate",
        "number",
        "K-1",
        "issuer",
        "Lab",
        "issued",
        "2026-01-05",
        "due",
        "2027-01-05",
        "factor",
        "2");
    standard("MIC-7", "spindle micrometer", "µm", "2500");
    certified("MIC-7", "K-2", "2026-02-03", "BLOCKS");
    String touched = kept(200, "2026-02-12", "MIC-7");
    Document page = reach("BLOCKS", "");
    assertThat(page.select("h2").text()).isEqualTo("1 touched, 0 of them with another verdict");
    assertThat(page.select("tbody tr").text())
        .contains(touched, "unknown", "BLOCKS sets no gap and measures no output");
    Visitor.Answer early =
        technician.post(
            "/standards/MIC-7/event",
            "kind",
            "check passed",
            "on",
            "2026-01-01",
            "note",
            "x",
            "against",
            "BLOCKS");
    assertThat(early.page().select(".complaint").text()).contains("BLOCKS had no certificate on");
  }

  @Test
  void datesThatRunBackwardsAreSaid() {
    Visitor.Answer answer =
        technician.get(
            "/standards/MIC-1/reach?from=2026-03-01&until=2026-01-01&unit=%C2%B5m&offset=1");
    assertThat(answer.page().select(".complaints").text()).contains("before it begins");
  }
}
