package loopwright.standard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference standards over HTTP: registered, certified, checked, chosen for a curve. */
@Tag("zone")
class StandardPagesTest {
  private static final String CURVE = "/loops/V-1/curve";
  private static Shop shop;
  private static Visitor technician;
  private static int next;

  /** Today is 2026-03-01. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-01-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static String registered(String kind) {
    next++;
    String code = "STD-" + next;
    Visitor.Answer answer =
        technician.post(
            "/standards",
            Shop.flat(
                Map.of(
                    "code",
                    code,
                    "kind",
                    kind,
                    "maker",
                    "Nordling",
                    "model",
                    "M4",
                    "serial",
                    "00" + next)));
    assertThat(answer.location()).isEqualTo("/standards/" + code + "/certificate");
    return code;
  }

  private static Map<String, String> certificate() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("number", "K-1");
    fields.put("issuer", "Marsh Laboratory");
    fields.put("issued", "2026-01-05");
    fields.put("due", "2027-01-05");
    fields.put("factor", "2");
    fields.put("unit", "µm");
    fields.put("low", "0");
    fields.put("high", "2000");
    fields.put("correction", "-0.4");
    fields.put("uncertainty", "1.0");
    fields.put("scale", "0.1");
    fields.put("resolution", "1");
    return fields;
  }

  private static Visitor.Answer enter(String code, String... changed) {
    Map<String, String> fields = certificate();
    for (int i = 0; i < changed.length; i += 2) {
      fields.put(changed[i], changed[i + 1]);
    }
    return technician.post("/standards/" + code + "/certificate", Shop.flat(fields));
  }

  private static String page(String path) {
    return technician.get(path).page().text();
  }

  private static Visitor.Answer event(String code, String kind, String on) {
    return technician.post(
        "/standards/" + code + "/event", "kind", kind, "on", on, "note", "1 µm apart");
  }

  @Test
  void aStandardWithItsCertificateIsListedWithItsDueDate() {
    String code = registered("spindle micrometer");
    assertThat(page("/")).contains(code, "No certificate is on record.");
    assertThat(enter(code).location()).isEqualTo("/standards/" + code);
    assertThat(page("/standards/" + code))
        .contains("K-1", "Marsh Laboratory", "0 to 2000 µm", "-0.4 µm", "1.0 µm", "0.1 %")
        .contains("due 2027-01-05, k = 2")
        .contains("No calibration names it.");
    assertThat(technician.get("/standards").page().select("tbody tr").text())
        .contains(code, "2027-01-05", "Due in 310 days.");
    assertThat(page("/")).doesNotContain(code);
    assertThat(enter(code).page().select(".complaint").text())
        .contains("Certificate K-1 of Marsh Laboratory is on record");
  }

  @Test
  void overdueAndSoonDueStandardsStandOnTheFirstPageUntilTakenOutOfUse() {
    String code = registered("voltmeter");
    assertThat(enter(code, "unit", "V", "high", "30", "due", "2026-03-20").status()).isEqualTo(303);
    assertThat(page("/")).contains(code, "due on 2026-03-20, in 19 days");
    String late = registered("other");
    Map<String, String> old = certificate();
    java.util.List.of("unit", "low", "high", "correction", "uncertainty", "scale", "resolution")
        .forEach(old::remove);
    old.put("due", "2026-03-01");
    old.put("expired", "yes");
    assertThat(technician.post("/standards/" + late + "/certificate", Shop.flat(old)).status())
        .isEqualTo(303);
    assertThat(page("/")).contains(late, "overdue since 2026-03-01");
    assertThat(event(late, "taken out of use", "2026-03-01").status()).isEqualTo(303);
    assertThat(page("/")).doesNotContain(late);
    assertThat(event(code, "check failed", "2026-02-27").status()).isEqualTo(303);
    assertThat(page("/")).contains(code, "It failed its last intermediate check.");
    assertThat(page("/standards/" + code)).contains("check failed 1 µm apart Demo Technician");
    assertThat(event(code, "check passed", "2026-03-02").page().select(".complaint").text())
        .contains("2026-03-02 is in the future");
    assertThat(event(code, "dropped", "2026-02-27").page().select(".complaint").text())
        .contains("Choose what happened");
  }

  @ParameterizedTest
  @CsvSource({
    "issued, 2026-03-02, 'issued on 2026-03-02, and today is 2026-03-01'",
    "due, 2026-01-05, The due date lies after the issue",
    "due, 2026-02-28, is out of date. Tick here",
    "issued, soon, Give the day like",
    "factor, 0, A coverage factor of 0 can't be",
    "factor, -2, A coverage factor of -2 can't be",
    "factor, two, is not one number",
    "against, NOBODY, There is no reference standard NOBODY",
    "uncertainty, 0, an uncertainty of 0 µm can't be",
    "uncertainty, -1, an uncertainty of -1 µm can't be",
    "uncertainty, '', is not one number",
    "uncertainty, 5000, larger than the range",
    "high, 0, begins at 0 µm and ends at 0 µm",
    "low, 2500, Give the smaller end first",
    "low, -10, Give ranges without sign",
    "scale, -0.1, as the uncertainty of the scale can't be",
    "resolution, -1, as the smallest step can't be",
    "resolution, fine, 'Range 1: “fine” is not one number'",
    "unit, V, Choose the unit of the ranges",
    "number, '', number"
  })
  void whatIsTypedWrongIsSaidAndNothingIsKept(String field, String typed, String said) {
    String code = registered("spindle micrometer");
    Visitor.Answer answer = enter(code, field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text()).contains(said);
    assertThat(answer.page().select("input[name=correction]").first().val()).isEqualTo("-0.4");
    assertThat(page("/standards/" + code)).contains("None is on record.");
  }

  @Test
  void aCodeIsGivenOnce() {
    String code = registered("voltmeter");
    Visitor.Answer again =
        technician.post(
            "/standards",
            "code",
            code.toLowerCase(java.util.Locale.ROOT),
            "kind",
            "voltmeter",
            "maker",
            "A",
            "model",
            "B",
            "serial",
            "C");
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.page().select(".complaint").text()).contains(code + " is in the register");
    assertThat(technician.post("/standards", "code", "X").page().select(".complaint").text())
        .contains("Choose what it is", "the maker", "the serial");
  }

  private static FilledForm curve(String... standards) {
    return FilledForm.of(technician.get(CURVE).page(), "#curve")
        .set("profile", "api670-2mm")
        .set("gap-unit", "µm")
        .set("gap", "250", "500", "750", "1000", "1250", "1500", "1750", "2000", "2250")
        .set("up", "-2", "-4", "-6", "-8", "-10", "-12", "-14", "-16", "-18")
        .set("standard", standards)
        .set("reason", "outage");
  }

  private static Document complained(FilledForm form, String... said) {
    Visitor.Answer answer = form.send(technician, "do", "keep");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().text()).contains(said);
    return answer.page();
  }

  @Test
  void aCurveNamesItsEquipmentUnderTheCertificateOfThatDay() {
    String micrometer = registered("spindle micrometer");
    String voltmeter = registered("voltmeter");
    enter(micrometer, "high", "2500");
    enter(voltmeter, "unit", "V", "high", "30");
    enter(voltmeter, "number", "K-2", "issued", "2026-02-20", "unit", "V", "high", "30");
    FilledForm form = curve(micrometer, voltmeter).set("on", "2026-02-10").set("time", "09:00");
    Visitor.Answer kept = form.send(technician, "do", "keep");
    assertThat(kept.page().select(".complaint").text()).isEmpty();
    assertThat(kept.status()).isEqualTo(303);
    assertThat(page(kept.location()))
        .contains("Made with", micrometer, voltmeter, "certificate K-1 of Marsh Laboratory")
        .doesNotContain("K-2");
    assertThat(page("/standards/" + voltmeter)).contains("V-1 K-1");
    assertThat(form.send(technician, "do", "keep").location())
        .as("sent twice is one record")
        .isEqualTo(kept.location());
  }

  @Test
  void equipmentThatDoesNotSuitIsRefusedOrAskedBack() {
    String micrometer = registered("spindle micrometer");
    String other = registered("spindle micrometer");
    enter(micrometer, "due", "2026-02-15", "expired", "yes");
    enter(other, "high", "2500", "issued", "2026-02-20");
    FilledForm early = curve(other).set("on", "2026-02-10").set("time", "10:00");
    complained(early, other + " had no certificate on 2026-02-10: its first is of 2026-02-20");
    complained(
        curve(other, micrometer).set("on", "2026-02-25").set("time", "10:00"),
        "Two of one sort, spindle micrometer");
    FilledForm late = curve(micrometer).set("on", "2026-02-25").set("time", "11:00");
    Document page =
        complained(
            late,
            "was out of date on 2026-02-25 (due 2026-02-15)",
            "Outside every range of the certificate of " + micrometer + ": 2250 µm");
    assertThat(page.select("input[name=standard][checked]").val()).isEqualTo(micrometer);
    Visitor.Answer kept = late.set("confirmed", "yes").send(technician, "do", "keep");
    assertThat(kept.status()).isEqualTo(303);
    assertThat(page(kept.location())).contains("certificate out of date that day");
    complained(
        curve("NOBODY").set("on", "2026-02-25").set("time", "12:00"),
        "There is no reference standard NOBODY in the register.");
  }

  @Test
  void aDraftKeepsTheChosenEquipment() {
    String voltmeter = registered("voltmeter");
    enter(voltmeter, "unit", "V", "high", "30");
    curve(voltmeter).send(technician, "do", "draft");
    assertThat(technician.get(CURVE).page().select("input[name=standard][checked]").val())
        .isEqualTo(voltmeter);
    curve().send(technician, "do", "discard");
  }
}
