package loopwright.fieldcheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.journal.Verification;
import loopwright.matching.PartKind;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The small forms on a loop's page, over HTTP. */
class CheckPagesTest {
  private static final String LOOP = "/loops/V-1";
  private static Shop shop;
  private static Visitor technician;

  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    shop.point("V-1");
    shop.set(1);
    shop.part(PartKind.CABLE, "C-45", "4.5");
    assertThat(shop.survey("V-1", "2026-02-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static Visitor.Answer send(Visitor who, String kind, String... typed) {
    String path = LOOP + "/checks/" + kind;
    Map<String, String> fields = new LinkedHashMap<>(Shop.fields(technician.get(path).page()));
    fields.put("reason", "outage");
    for (int i = 0; i < typed.length; i += 2) {
      fields.put(typed[i], typed[i + 1]);
    }
    return who.post(path, Shop.flat(fields));
  }

  private static String panel() {
    return technician.get(LOOP).page().select("h2:contains(Readings and checks) ~ *").text();
  }

  @Test
  void aGapReadingIsKeptAsTypedAndStandsOnTheLoop() {
    Visitor.Answer kept =
        send(technician, "gap-reading", "volts", "-10,20", "state", "rest", "rotor", "mid-float");
    assertThat(kept.page().select(".complaint").text()).isEmpty();
    assertThat(kept.location()).isEqualTo(LOOP);
    assertThat(panel()).contains("-10,20 V at the driver, machine at rest, mid-float");
    send(technician, "gap-reading", "volts", "-10,20", "state", "rest", "rotor", "mid-float");
    assertThat(technician.get(LOOP + "/checks").page().select("tbody td:contains(-10,20 V)"))
        .as("sent twice is one record")
        .hasSize(1);
    assertThat(technician.get(LOOP + "?at=2026-02-25").page().text()).doesNotContain("-10,20 V");
  }

  @Test
  void badInputIsToldAtItsFieldAndStaysTyped() {
    Document page =
        send(technician, "gap-reading", "volts", "10.2", "state", "", "on", "2027-01-01").page();
    assertThat(page.select("#volts-about").text()).contains("10.2 V is positive");
    assertThat(page.select("#state-about").text()).contains("Say what the machine did");
    assertThat(page.select("#on-about").text()).contains("future");
    assertThat(page.select("#volts").val()).isEqualTo("10.2");
    assertThat(send(technician, "gap-reading", "volts", "ten").page().select("#volts-about").text())
        .contains("not one number");
    page = send(technician, "electrical", "supply", "24", "coil", "-3", "shield", "low").page();
    assertThat(page.select("#supply-about").text()).contains("can't be", "-40 to 0 V");
    assertThat(page.select("#coil-about").text()).contains("can't be");
    assertThat(page.select("#shield-about").text()).contains("not one number");
    assertThat(send(technician, "electrical").page().select(".complaints").text())
        .contains("fill in at least one field");
    assertThat(send(technician, "electrical", "coil", "7.5", "coil-unit", "V").status())
        .isEqualTo(422);
    page = send(technician, "slow-roll", "phase", "30").page();
    assertThat(page.select("#amplitude-about").text()).contains("Fill this in");
    assertThat(page.select("#phase-as-about").text()).contains("lag or as lead");
    assertThat(technician.get(LOOP + "/checks/no-such").status()).isEqualTo(404);
    assertThat(technician.get("/checks/J-999").status()).isEqualTo(404);
    assertThat(technician.get("/checks/1").status()).isEqualTo(404);
  }

  @Test
  void aCheckIsJudgedByThePartsOnRecordAndSaysByWhichRule() {
    Visitor.Answer kept =
        send(technician, "electrical", "supply", "-16.0", "loop", "8.70", "loop-unit", "Ω");
    assertThat(kept.location()).startsWith("/checks/J-");
    Document page = technician.get(kept.location()).page();
    assertThat(page.select("tr:contains(supply) .verdict").text()).isEqualTo("attention");
    assertThat(page.select("tr:contains(8.73 ± 0.68)").text()).contains("matches", "handout");
    assertThat(page.select("dl").text()).contains("8.70 Ω", "-16.0 V", "outage");
    assertThat(panel()).contains("electrical check");
    assertThat(send(technician, "electrical", "supply", "-16.0", "loop", "8.70").location())
        .as("sent twice is one record")
        .isEqualTo(kept.location());
    assertThat(Verification.of(shop.app.database()).agrees()).isTrue();
  }

  @Test
  void aTableOfReadingsNeedsBothOfARow() {
    String path = LOOP + "/checks/channel";
    Document page =
        technician
            .post(
                path,
                "injected",
                "400",
                "injected",
                "x",
                "injected",
                "100",
                "shown",
                "50.8",
                "shown",
                "1",
                "shown",
                "",
                "injected-unit",
                "mV",
                "shown-unit",
                "µm",
                "injected-as",
                "pk-pk",
                "on",
                "2026-02-28",
                "time",
                "08:00",
                "taken-by",
                "T",
                "reason",
                "outage")
            .page();
    assertThat(page.select("#rows").text()).contains("Row 2, Injected: “x” is not one number");
    assertThat(page.select("input[name=injected]").eachAttr("value")).contains("400", "x", "100");
    Visitor.Answer kept =
        technician.post(
            path,
            "injected",
            "400",
            "shown",
            "50.8",
            "injected-unit",
            "mV",
            "shown-unit",
            "µm",
            "injected-as",
            "pk-pk",
            "relay",
            "did not change over",
            "on",
            "2026-02-28",
            "time",
            "08:00",
            "taken-by",
            "T",
            "reason",
            "outage");
    assertThat(kept.status()).isEqualTo(303);
    assertThat(technician.get(kept.location()).page().text())
        .contains("400 mV", "50.8 µm", "the protection is not proved");
  }

  /** 7.874 mV/µm · 100 µm pk-pk = 787.4 mV pk-pk = 278.39 mV rms. */
  @Test
  void aDynamicCheckIsHeldAgainstNominalAndTheStaticCurve() {
    Visitor.Answer kept =
        send(
            technician,
            "dynamic",
            "displacement",
            "100",
            "displacement-as",
            "pk-pk",
            "frequency",
            "3600",
            "frequency-unit",
            "cpm",
            "output",
            "278.39",
            "output-as",
            "rms",
            "u-displacement",
            "1",
            "u-output",
            "0.5",
            "shown",
            "98");
    assertThat(kept.page().select(".complaint").text()).isEmpty();
    String page = technician.get(kept.location()).page().text();
    assertThat(page)
        .contains("7.874 mV/µm (200.0 mV/mil) ±", "at 60 Hz", "from the driver's 200 mV/mil")
        .contains("no as-left curve of exactly these parts", "It shows 98.0 µm");
    Document missing = send(technician, "dynamic", "output", "278").page();
    assertThat(missing.select("#output-as-about").text()).contains("Fill this in");
    assertThat(missing.select("#displacement-about").text()).contains("Fill this in");
  }

  @Test
  void aResponseIsDrawnAndTheFieldCableExplainsItsShare() {
    Visitor.Answer kept =
        technician.post(
            LOOP + "/checks/response",
            "at",
            "50",
            "moved",
            "100",
            "gave",
            "800",
            "phase",
            "180",
            "at",
            "10000",
            "moved",
            "100",
            "gave",
            "500",
            "phase",
            "120",
            "at-unit",
            "Hz",
            "moved-unit",
            "µm",
            "gave-unit",
            "mV",
            "phase-unit",
            "°",
            "displacement-as",
            "pk-pk",
            "output-as",
            "pk-pk",
            "cable",
            "305",
            "cable-unit",
            "m",
            "capacitance",
            "150",
            "capacitance-unit",
            "pF/m",
            "on",
            "2026-02-28",
            "time",
            "09:00",
            "taken-by",
            "T",
            "reason",
            "outage");
    assertThat(kept.page().select(".complaint").text()).isEmpty();
    Document page = technician.get(kept.location()).page();
    assertThat(page.text())
        .contains("Worst at 10000 Hz: −4.08 dB", "corner at 69.6 kHz", "it explains −0.09 dB");
    assertThat(page.text())
        .contains("response band of profile api670-2mm, version 1; trade data, from memory");
    assertThat(page.select("svg.plot").attr("aria-label")).contains("Level and phase");
    assertThat(page.select("svg .plot-mark.outside")).hasSize(1);
  }

  @Test
  void readingsAndChecksStandInTheHistoryAndAreFollowedOverTheYears() {
    for (String day : new String[] {"2026-02-22", "2026-02-24"}) {
      send(technician, "gap-reading", "volts", "-10.1", "state", "turning", "on", day);
      assertThat(
              send(technician, "slow-roll", "amplitude", "0.2", "amplitude-unit", "mil", "on", day)
                  .status())
          .isEqualTo(303);
    }
    Document loop = technician.get(LOOP).page();
    assertThat(loop.select("ol.story li:contains(slow-roll vector) a[href^=/checks/J-]"))
        .hasSizeGreaterThan(1);
    assertThat(loop.select("ol.story").text())
        .contains("2026-02-22", "gap reading -10.1 V at the driver, machine turning slowly");
    assertThat(loop.select("ol.story > li").eachText())
        .as("newest first, fitted and done together")
        .last()
        .asString()
        .contains("survey");
    Document drift = technician.get(LOOP + "/drift").page();
    assertThat(drift.select("svg[aria-label^=Readings and checks] text").eachText())
        .anyMatch(text -> text.contains("Gap voltage, V"))
        .anyMatch(text -> text.contains("Slow roll, µm"))
        .anyMatch(text -> text.contains("turning slowly, at the driver"));
  }

  @Test
  void whoOnlyLooksRecordsNothing() {
    Visitor viewer = shop.app.as("viewer");
    assertThat(viewer.get(LOOP + "/checks").status()).isEqualTo(200);
    assertThat(viewer.get(LOOP + "/checks").page().select("main .acts")).isEmpty();
    assertThat(viewer.get(LOOP + "/checks/electrical").status()).isEqualTo(403);
    assertThat(viewer.post(LOOP + "/checks/gap-reading", "volts", "-10").status()).isEqualTo(403);
  }
}
