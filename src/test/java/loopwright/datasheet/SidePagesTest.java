package loopwright.datasheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.register.PartIdentity;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Data sheets, alloy groups and field circuits over HTTP; loops follow in the same change. */
class SidePagesTest {
  private static final String PROBE = "/sheets/of?kind=probe&family=Q8";
  private static final String CABLE = "/sheets/of?kind=extension%20cable&family=Q8";

  private static Shop shop;
  private static Visitor engineer;

  @BeforeAll
  static void open() {
    shop = new Shop();
    engineer = shop.app.as("engineer");
    shop.point("V-1");
    shop.set(1);
    shop.part(PartKind.BARRIER, new PartIdentity("Nordling", "Z 28", "BR-1", ""), "1");
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  private static Visitor.Answer send(String path, String to, String... changes) {
    Map<String, String> fields = new LinkedHashMap<>(Shop.fields(engineer.get(path).page()));
    fields.put("reason", "as the sheet has it");
    for (int i = 0; i < changes.length; i += 2) {
      fields.put(changes[i], changes[i + 1]);
    }
    return engineer.post(to, Shop.flat(fields));
  }

  private static String loop() {
    return engineer.get("/loops/V-1").page().select("main").text();
  }

  @Test
  void aSheetIsEnteredShownAndJudgedBy() {
    assertThat(send(PROBE, "/sheets/of", "toward-driver", "miniature coaxial male").status())
        .isEqualTo(303);
    assertThat(loop()).contains("Which connector extension cable C-1 has");
    assertThat(send(CABLE, "/sheets/of", "toward-probe", "miniature coaxial MALE").status())
        .isEqualTo(303);
    assertThat(loop()).contains("they don't mate");
    assertThat(engineer.get("/").page().select("main").text()).contains("they don't mate");
    send(CABLE, "/sheets/of", "toward-probe", "miniature coaxial female");
    assertThat(loop()).doesNotContain("they don't mate");
    String page = engineer.get(CABLE).page().select("main").text();
    assertThat(page)
        .contains("miniature coaxial male → miniature coaxial female")
        .contains("as the sheet has it");
    assertThat(engineer.get("/families/Q8").page().select("main").text())
        .contains("miniature coaxial female");
    assertThat(engineer.get("/sheets").page().select("main").text()).contains("family Q8");
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource({
    "toward-driver, miniature coaxial, is no connector",
    "celsius-low, warm, is not a number",
    "celsius-high, 120.55, can't be 120.55",
    "celsius-high, 9000, can't be 9000",
    "certificate, X 17, Give all three",
    "level, Gb, Give all three",
    "level, Gd, Choose one from the list",
  })
  void whatNoSheetSaysIsRefusedInPlace(String field, String typed, String complaint) {
    Visitor.Answer answer = send(PROBE, "/sheets/of", field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains(complaint);
    if (!typed.equals("Gd")) {
      assertThat(Shop.fields(answer.page())).containsEntry(field, typed);
    }
  }

  @Test
  void crossedTemperaturesAndAnOldFormAreRefused() {
    Visitor.Answer crossed = send(PROBE, "/sheets/of", "celsius-low", "120", "celsius-high", "-35");
    assertThat(crossed.status()).isEqualTo(422);
    assertThat(crossed.page().select(".complaint").text()).contains("120 is not below -35");
    String driver = "/sheets/of?kind=driver&maker=Nordling&model=Y1";
    Map<String, String> old = Shop.fields(engineer.get(driver).page());
    assertThat(send(driver, "/sheets/of", "celsius-high", "65").status()).isEqualTo(303);
    old.put("celsius-high", "70");
    old.put("reason", "another sheet");
    Visitor.Answer stale = engineer.post("/sheets/of", Shop.flat(old));
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().select("main").text()).contains("? to 65 °C").contains("by Demo");
    assertThat(stale.page().select("[name=celsius-high]").val()).isEqualTo("70");
    assertThat(shop.app.as("viewer").get(driver).page().select("main form")).isEmpty();
    assertThat(shop.app.as("technician").post("/sheets/of", "kind", "driver").status())
        .isEqualTo(403);
    assertThat(engineer.get("/sheets/of?kind=driver").status()).isEqualTo(422);
    assertThat(engineer.get("/sheets/of?kind=spoon&family=Q8").status()).isEqualTo(404);
  }

  @Test
  void groupsBeginWithCommonPracticeAndAreKeptByEngineers() {
    assertThat(engineer.get("/alloys").page().select("main").text()).contains("No group is kept");
    assertThat(engineer.post("/alloys/begin").status()).isEqualTo(303);
    assertThat(engineer.get("/alloys").page().select("tbody tr")).hasSize(6);
    assertThat(engineer.get("/alloys").page().select("main").text())
        .contains("Austenitic stainless steel")
        .contains("1.25")
        .contains("from memory");
    Visitor.Answer twice =
        send("/alloys/new", "/alloys/new", "name", "Steel", "alloys", "4340\n41 40");
    assertThat(twice.status()).isEqualTo(422);
    assertThat(twice.page().select(".complaint").text()).contains("41 40 is in group Low-alloy");
    assertThat(twice.page().select("textarea").text()).contains("4340");
    Visitor.Answer slope =
        send("/alloys/new", "/alloys/new", "name", "Steel", "alloys", "4340", "slope", "0");
    assertThat(slope.page().select(".complaint").text()).contains("no relative slope");
    assertThat(
            send("/alloys/new", "/alloys/new", "name", "Steel", "alloys", " ")
                .page()
                .select(".complaint")
                .text())
        .contains("at least one alloy");
    assertThat(send("/alloys/new", "/alloys/new", "name", "Steel", "alloys", "4340").status())
        .isEqualTo(303);
    String steel =
        engineer.get("/alloys").page().select("a:containsOwn(Steel)").last().attr("href");
    Map<String, String> old = Shop.fields(engineer.get(steel).page());
    send(steel, steel, "slope", "1.02");
    old.put("slope", "1.03");
    old.put("reason", "measured");
    Visitor.Answer stale = engineer.post(steel, Shop.flat(old));
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().select("main .facts").text()).contains("1.02");
    assertThat(engineer.get("/alloys/none").status()).isEqualTo(404);
  }

  @Test
  void theFieldCircuitIsRecordedByTechnicians() {
    String path = "/loops/V-1/circuit";
    Map<String, String> fields = Shop.fields(shop.technician.get(path).page());
    fields.put("barrier", "BR-1");
    fields.put("cable", "984,25");
    fields.put("cable-unit", "ft");
    fields.put("picofarads", "150");
    fields.put("reason", "read on the drawing");
    assertThat(shop.technician.post(path, Shop.flat(fields)).status()).isEqualTo(303);
    assertThat(loop()).contains("barrier BR-1").contains("984,25 ft (299.999 m)");
    String part = engineer.get("/find?q=BR-1").location();
    assertThat(engineer.get(part).page().select("main").text())
        .contains("Stands behind the drivers of V-1");
    assertThat(shop.technician.post(path, Shop.flat(fields)).status()).isEqualTo(409);
    fields.put("version", "1");
    for (String[] wrong :
        new String[][] {
          {"cable", "0", "can't be 0 ft"},
          {"cable", "-5", "can't be"},
          {"cable", "40000", "at most 3000 m"},
          {"barrier", "D-1", "known as driver"},
          {"barrier", "BR-9", "No barrier or isolator"},
          {"picofarads", "-1", "can't be -1 pF/m"},
          {"fitted", "none", "none is fitted, and give BR-1"},
        }) {
      Map<String, String> typed = new LinkedHashMap<>(fields);
      typed.put(wrong[0], wrong[1]);
      Visitor.Answer answer = shop.technician.post(path, Shop.flat(typed));
      assertThat(answer.status()).as(wrong[2]).isEqualTo(422);
      assertThat(answer.page().select(".complaint").text()).contains(wrong[2]);
    }
  }
}
