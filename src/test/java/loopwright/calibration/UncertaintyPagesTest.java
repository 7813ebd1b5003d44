package loopwright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

/** Uncertainty and decision on a record, rules of profiles, looking under another profile. */
class UncertaintyPagesTest {
  private static final String CURVE = "/loops/V-1/curve";
  private static Shop shop;
  private static Visitor technician;
  private static Visitor engineer;
  private static int minute;

  /** Standard uncertainties of 0.1 mil and 10 mV, each reading its own. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    engineer = shop.app.as("engineer");
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-01-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
    standard("MIC-1", "spindle micrometer", "mil", "100", "0.2", "", "0");
    standard("DVM-1", "voltmeter", "mV", "30000", "20", "", "0");
    standard("MIC-2", "spindle micrometer", "mil", "100", "0.002", "0.4", "1");
    standard("DVM-2", "voltmeter", "V", "30", "0.0002", "", "0");
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static void standard(
      String code, String kind, String unit, String high, String u, String scale, String correct) {
    technician.post(
        "/standards", "code", code, "kind", kind, "maker", "A", "model", "B", "serial", code);
    Visitor.Answer answer =
        technician.post(
            "/standards/" + code + "/certificate",
            "number",
            "K-" + code,
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
            "correction",
            correct,
            "uncertainty",
            u,
            "scale",
            scale,
            "resolution",
            "");
    assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
  }

  private static FilledForm curve(String profile, double perMil, String... standards) {
    minute++;
    String[] gaps = IntStream.rangeClosed(1, 9).mapToObj(i -> "" + 10 * i).toArray(String[]::new);
    String[] volts =
        IntStream.rangeClosed(1, 9)
            .mapToObj(i -> String.format(Locale.ROOT, "%.3f", -perMil * 10 * i / 1000))
            .toArray(String[]::new);
    return FilledForm.of(technician.get(CURVE).page(), "#curve")
        .set("profile", profile)
        .set("gap-unit", "mil")
        .set("gap", gaps)
        .set("up", volts)
        .set("standard", standards)
        .set("on", "2026-02-10")
        .set("time", String.format(Locale.ROOT, "09:%02d", minute))
        .set("reason", "outage");
  }

  private static String kept(FilledForm form) {
    Visitor.Answer answer = form.send(technician, "do", "keep");
    assertThat(answer.status())
        .as(answer.page().select(".complaints, .complaint").text())
        .isEqualTo(303);
    return answer.location();
  }

  private static Document page(String path) {
    return technician.get(path).page();
  }

  @Test
  void theBudgetIsATableAndEquipmentThatCannotProveTheToleranceIsTold() {
    Document page = page(kept(curve("api670-2mm", 200, "MIC-1", "DVM-1")));
    // u(ISF) = √2·√((10 mV)² + (200 mV/mil · 0.1 mil)²)/10 mil = 3.16 mV/mil; U = 1.96 u = 3.1 %
    assertThat(page.text())
        .contains("U(ISF) is 3.1 % of nominal against ±5.0 %")
        .contains("This equipment cannot prove this tolerance")
        .contains("Biggest contributor: MIC-1: certificate (80 % of the variance)")
        .contains("One run shows no repeatability");
    Document budget = page;
    assertThat(budget.select(".budgets table").first().text())
        .contains("MIC-1: certificate · biggest", "2.54 µm", "80 %", "∞")
        .contains("DVM-1: certificate", "0.0100 V", "20 %")
        .contains("k = 1.96");
  }

  @Test
  void aScaleErrorStaysOneErrorAndCorrectionsAreTold() {
    Document page = page(kept(curve("api670-2mm", 200, "MIC-2", "DVM-2")));
    // the scale's 0.2 % goes straight into the slope: 0.0157 mV/µm of 7.874, whatever the points
    assertThat(page.select(".budgets table").get(1).text())
        .contains("MIC-2: scale · biggest normal, the same share of all readings 0.00200 1")
        .contains("0.0157");
    assertThat(page.text())
        .contains("without the corrections of the certificates. With them: ASF 7.874 mV/µm");
  }

  @Test
  void upAndDownGiveRepeatability() {
    FilledForm form = curve("api670-2mm", 200, "MIC-2", "DVM-2");
    String[] down = {"-2.02", "-4.02", "-6.02", "-8.02", "-10.02", "-12.02", "-14.02", "-16.02"};
    form.set("down", down);
    Document page = page(kept(form));
    // s = √(8·(20 mV)²/(2·8)) = 14.1 mV with 8 degrees of freedom
    assertThat(page.select(".budgets table").first().text())
        .contains(
            "repeatability, up and down · biggest normal, each reading its own 0.0141 V", "8");
  }

  @Test
  void withoutVoltmeterOrOutsideItsRangeNothingIsStated() {
    assertThat(page(kept(curve("api670-2mm", 200, "MIC-1"))).text())
        .contains("No uncertainty is stated: no voltmeter is named");
    assertThat(page(kept(curve("api670-2mm", 200))).text())
        .contains("No measuring equipment is named, so no uncertainty is stated.");
  }

  @Test
  void theRuleOfTheProfileDecidesAndAViewUnderAnotherChangesNothing() {
    Map<String, String> fields = Shop.fields(engineer.get("/profiles/api670-2mm/change").page());
    fields.put("rule", "GUARDED");
    fields.put("reason", "customer asks for proof");
    assertThat(engineer.post("/profiles/api670-2mm/change", Shop.flat(fields)).status())
        .isEqualTo(303);
    Document profile = page("/profiles/api670-2mm");
    assertThat(profile.text()).contains("guarded: the limits are drawn in", "Versions");
    assertThat(profile.select("tbody tr")).hasSize(2);

    String path = kept(curve("api670-2mm", 204.5, "MIC-1", "DVM-1"));
    Document page = page(path);
    assertThat(page.select("#uncertainty ~ p .verdict").first().text())
        .isEqualTo("conforms, not proved");
    assertThat(page.text()).contains("(conditional pass) by the rule: guarded");
    assertThat(page.text()).contains("api670-2mm").doesNotContain("A view only");

    long before = shop.app.database().read(JournalStore::head);
    String other =
        page.select("select[name=profile] option").stream()
            .filter(option -> option.text().equals("api670-2mm-outside, version 1"))
            .findFirst()
            .orElseThrow()
            .val();
    Document view = page(path + "?profile=" + other);
    assertThat(view.select(".notice").text())
        .contains("A view only", "api670-2mm-outside, version 1", "The record keeps its verdict");
    assertThat(view.select("#uncertainty ~ p .verdict").first().text()).isEqualTo("conforms");
    assertThat(page(path).text()).doesNotContain("A view only");
    assertThat(shop.app.database().read(JournalStore::head)).isEqualTo(before);
  }

  @Test
  void budgetsAreCheckedByChanceBehindAButton() {
    String path = kept(curve("api670-2mm", 200, "MIC-2", "DVM-2"));
    assertThat(page(path).text()).doesNotContain("20000 trials");
    Document page = page(path + "?check=chance");
    assertThat(page.text()).contains("Monte Carlo check after JCGM 101:2008, 20000 trials");
    List<String> rows = page.select(".budgets > div:last-child tbody tr").eachText();
    assertThat(rows).hasSize(3);
    assertThat(rows.get(0)).startsWith("average scale factor");
    assertThat(page(path + "?check=chance").text()).as("it comes out again").isEqualTo(page.text());
  }

  private static Map<String, String> profile() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("code", "own-2mm");
    fields.put("name", "The shop's own");
    fields.put("source", "common practice, no source");
    fields.put("slope", "200");
    fields.put("slope-unit", "mV/mil");
    fields.put("isf", "4");
    fields.put("dsl", "20");
    fields.put("dsl-unit", "µm");
    fields.put("shift", "MINIMAX");
    fields.put("from-mil", "10");
    fields.put("to-mil", "90");
    fields.put("step-mil", "10");
    fields.put("rule", "RISK_LIMIT");
    fields.put("risk", "2.5");
    fields.put("review", "yes");
    fields.put("reason", "tighter than the standard");
    return fields;
  }

  @ParameterizedTest
  @CsvSource({
    "code, Own Profile, small letters",
    "code, api670-2mm, There is a profile api670-2mm already",
    "name, '', the name",
    "source, '', the source",
    "slope, 0, A scale factor lies above zero",
    "slope, many, is not one number",
    "slope-unit, V, Choose the unit",
    "isf, 0, more than 0 and at most 50",
    "isf, 51, more than 0 and at most 50",
    "dsl, -1, a distance above zero",
    "to-mil, 5, rises from its first gap",
    "step-mil, 7, whole number of increments",
    "step-mil, '', Fill this in",
    "step-mil, 0.01, more than 60 gaps",
    "rule, COIN, Choose one",
    "risk, 0, A risk limit lies above 0",
    "risk, 60, A risk limit lies above 0",
    "reason, '', the reason",
    "isf, 4.99999, at most 3 decimals",
    "temperature-from, 50, Fill this in",
    "temperature-to, -300, Fill this in",
    "band-from-1, 10, give the frequencies from and to",
    "band-low-1, -3, give the frequencies from and to",
    "band-source, ours, Give the ranges of frequencies"
  })
  void aProfileTypedWrongIsNotKept(String field, String typed, String said) {
    Map<String, String> fields = profile();
    fields.put(field, typed);
    Visitor.Answer answer = engineer.post("/profiles", Shop.flat(fields));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint, .complaints").text()).contains(said);
    assertThat(answer.page().select("input[name=edition]")).hasSize(1);
    assertThat(technician.get("/profiles/own-2mm").status()).isEqualTo(404);
  }

  @Test
  void aVersionHoldsWhatMayBeOfFrequencyResponseAndTemperature() {
    Map<String, String> fields = profile();
    fields.put("code", "shop-response");
    fields.put("temperature-from", "10");
    fields.put("temperature-to", "5");
    fields.put("band-from-1", "10");
    fields.put("band-to-1", "1000");
    fields.put("band-low-1", "0.5");
    fields.put("band-high-1", "-0.5");
    fields.put("band-from-2", "1000");
    fields.put("band-to-2", "ten");
    assertThat(engineer.post("/profiles", Shop.flat(fields)).page().text())
        .contains(
            "The lower temperature lies below",
            "row 1: The lower limit of the level lies above",
            "row 2: \"ten\" is no number for to Hz");
    fields.put("temperature-to", "40");
    fields.put("band-low-1", "-0.5");
    fields.put("band-high-1", "0.5");
    fields.put("band-to-2", "10000");
    fields.put("band-low-2", "-3");
    fields.put("band-phase-low-2", "-30");
    fields.put("band-phase-high-2", "5");
    assertThat(engineer.post("/profiles", Shop.flat(fields)).page().text())
        .contains("the source of the band");
    fields.put("band-source", "shop trial 7");
    assertThat(engineer.post("/profiles", Shop.flat(fields)).status()).isEqualTo(303);
    assertThat(page("/profiles/shop-response").text())
        .contains(
            "10 to 40 °C (50 to 104 °F)",
            "10 to 1000 Hz (600 to 60,000 cpm): −0.5 to +0.5 dB",
            "1000 to 10000 Hz (60,000 to 600,000 cpm): not below −3 dB, −30 to +5°",
            "shop trial 7");
    Map<String, String> change = Shop.fields(engineer.get("/profiles/shop-response/change").page());
    change.put("reason", "wider");
    change.put("band-low-1", "-0.6");
    assertThat(engineer.post("/profiles/shop-response/change", Shop.flat(change)).status())
        .isEqualTo(303);
    assertThat(page("/profiles/shop-response").text())
        .contains("−0.6 to +0.5 dB", "−0.5 to +0.5 dB");
    assertThat(page("/profiles/api670-2mm").text()).contains("0 to 45 °C", "from memory");
  }

  @Test
  void anEngineerAddsAProfileAndAStaleFormOverwritesNothing() {
    Map<String, String> fields = profile();
    fields.put("code", "bench-2mm");
    assertThat(technician.post("/profiles", Shop.flat(fields)).status()).isEqualTo(403);
    assertThat(engineer.post("/profiles", Shop.flat(fields)).location())
        .isEqualTo("/profiles/bench-2mm");
    assertThat(page("/profiles/bench-2mm").text())
        .contains("at most 2.5 %", "a second person reviews what is signed", "10 to 90 mil by 10");
    Map<String, String> change = Shop.fields(engineer.get("/profiles/bench-2mm/change").page());
    change.put("reason", "tighter");
    change.put("isf", "3");
    assertThat(engineer.post("/profiles/bench-2mm/change", Shop.flat(change)).status())
        .isEqualTo(303);
    Visitor.Answer stale = engineer.post("/profiles/bench-2mm/change", Shop.flat(change));
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().text()).contains("Version 2 was made meanwhile");
    assertThat(page("/profiles/bench-2mm").select("tbody tr")).hasSize(2);
  }
}
