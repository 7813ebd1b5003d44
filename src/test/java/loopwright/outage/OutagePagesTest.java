package loopwright.outage;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Outages over HTTP: planned, their loops suggested and settled, steps written, files. */
@Tag("zone")
class OutagePagesTest {
  private static Shop shop;
  private static Visitor planner;
  private static Visitor technician;

  /** V-1 holds a cable that is too long, V-2 is in balance without a curve, V-3 is not known. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    planner = shop.app.as("planner");
    shop.point("V-1");
    shop.point("V-2");
    shop.point("V-3");
    shop.set(1);
    shop.set(2);
    shop.part(PartKind.CABLE, "C-45", "4.5");
    assertThat(shop.survey("V-1", "2026-02-20", "P-1", "C-45", "D-1").status()).isEqualTo(303);
    assertThat(shop.survey("V-2", "2026-02-20", "P-2", "C-2", "D-2").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static int plannedSoFar;

  private static Map<String, String> planning() {
    Map<String, String> fields = Shop.fields(planner.get("/outages/new").page());
    fields.put(
        "train",
        planner.get("/outages/new").page().select("input[name=train]").first().attr("value"));
    fields.putAll(
        Map.of(
            "name", "Spring",
            "begins", "2026-04-01",
            "ends", "2026-04-12",
            "reason", "agreed with operations"));
    return fields;
  }

  private static String planned() {
    Map<String, String> fields = planning();
    plannedSoFar++;
    fields.put("name", "Spring " + plannedSoFar);
    String location = planner.post("/outages/new", Shop.flat(fields)).location();
    assertThat(location).matches("/outages/O-\\d+/scope");
    return location.replace("/scope", "");
  }

  private static Visitor.Answer settle(String outage, String what, String... tags) {
    Document page = planner.get(outage + "/scope?show=all").page();
    List<String> fields = new ArrayList<>(List.of("do", what, "reason", "because"));
    for (String tag : tags) {
      fields.addAll(
          List.of("loop", page.select("input[name=loop][aria-label=" + tag + "]").attr("value")));
    }
    fields.addAll(List.of("work", "as-found", "work", "as-left"));
    String action = page.select("main form[method=post]").attr("action");
    return planner.post(action, fields.toArray(String[]::new));
  }

  @Test
  void whatSpeaksForALoopStandsBesideItWithItsReason() {
    String outage = planned();
    Document page = planner.get(outage + "/scope").page();
    assertThat(page.select("tbody tr:contains(V-1)").text())
        .contains(
            "refused", "out of balance", "0.5 m (1.6 ft) too long", "not calibrated as fitted");
    assertThat(page.select("tbody tr:contains(V-2)").text())
        .contains("not calibrated as fitted No as-left calibration is on record.");
    assertThat(page.select("tbody tr:contains(V-3)").text()).contains("something unknown");
    Document off = planner.get(outage + "/scope?show=out+of+balance").page();
    assertThat(off.select("tbody tr input[name=loop]").eachAttr("aria-label"))
        .containsExactly("V-1");
    assertThat(
            planner
                .get(outage + "/scope?show=all&holding=v-2")
                .page()
                .select("tbody input[name=loop]")
                .eachAttr("aria-label"))
        .containsExactly("V-2");
  }

  @Test
  void loopsAreTakenInAndOutAndEveryWordOnThemStays() {
    String outage = planned();
    assertThat(settle(outage, "in", "V-1", "V-2").status()).isEqualTo(303);
    assertThat(settle(outage, "out", "V-1").status()).isEqualTo(303);
    Document page = planner.get(outage + "/scope").page();
    assertThat(page.select("h1").text()).contains("1 taken");
    assertThat(page.select("tbody tr:contains(V-1)").text())
        .contains("left out by Demo Planner: because");
    assertThat(page.select("tbody tr:contains(V-2)").text())
        .contains("as-found static, as-left static", "taken in by Demo Planner");
    assertThat(technician.get(outage).page().text()).contains("1 loop is taken.");
  }

  @Test
  void whatIsTypedWrongIsSaidAndStaysTyped() {
    Map<String, String> fields = planning();
    fields.put("ends", "2026-03-01");
    Visitor.Answer answer = planner.post("/outages/new", Shop.flat(fields));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains("before it begins");
    assertThat(answer.page().select("input[name=name]").val()).isEqualTo("Spring");
    assertThat(answer.page().select("input[name=train][checked]")).hasSize(1);
    fields = planning();
    fields.remove("train");
    assertThat(planner.post("/outages/new", Shop.flat(fields)).body()).contains("O-102");
    String outage = planned();
    fields = planning();
    fields.put("name", "Spring " + plannedSoFar);
    assertThat(planner.post("/outages/new", Shop.flat(fields)).body())
        .as("sent twice")
        .contains("O-113", outage.substring(outage.lastIndexOf('/') + 1) + " is planned just so");
    assertThat(settle(outage, "in").body()).contains("O-109");
    assertThat(planner.post(outage + "/scope", "do", "in", "reason", "", "loop", "1").body())
        .contains("why they are taken");
    assertThat(planner.post(outage + "/scope", "do", "in", "reason", "x", "loop", "1").body())
        .contains("O-108");
    assertThat(
            planner
                .post(outage + "/scope", "do", "in", "reason", "x", "loop", "999", "work", "verify")
                .body())
        .contains("O-107");
    assertThat(planner.get("/outages/O-999").status()).isEqualTo(404);
    assertThat(planner.get("/outages/1").status()).isEqualTo(404);
  }

  @Test
  void twoPlannersChangingOneOutageDontOverwriteEachOther() {
    String outage = planned();
    Map<String, String> first = Shop.fields(planner.get(outage + "/edit").page());
    first.put("reason", "moved");
    first.put("ends", "2026-04-14");
    assertThat(planner.post(outage + "/edit", Shop.flat(first)).status()).isEqualTo(303);
    first.put("ends", "2026-04-20");
    assertThat(planner.post(outage + "/edit", Shop.flat(first)).status()).isEqualTo(409);
    assertThat(planner.get(outage).page().text()).contains("2026-04-01 to 2026-04-14");
  }

  @Test
  void onlyAPlannerPlansAndWorkBeginsOnceAPackIsIssued() {
    String outage = planned();
    assertThat(technician.get("/outages/new").status()).isEqualTo(403);
    assertThat(technician.get(outage + "/scope").page().select("button[name=do]")).isEmpty();
    assertThat(technician.post(outage + "/scope", "do", "in", "reason", "x").status())
        .isEqualTo(403);
    Visitor.Answer early = planner.post(outage + "/begin", "note", "now");
    assertThat(early.status()).isEqualTo(422);
    assertThat(early.body()).contains("O-105");
  }

  @Test
  void theShopWritesItsOwnStepsAndNobodyOverwritesThem() {
    Document page = planner.get("/work-steps").page();
    String version =
        page.select("form:has(input[value=restore]) input[name=version]").attr("value");
    String[] fields = {"work", "restore", "version", version, "steps", "Compare.\n\n Prove. "};
    assertThat(planner.post("/work-steps", fields).status()).isEqualTo(303);
    assertThat(planner.get("/work-steps").page().select("#steps-restore").val())
        .isEqualTo("Compare.\nProve.");
    Visitor.Answer again = planner.post("/work-steps", fields);
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.body()).contains("O-112");
    assertThat(technician.post("/work-steps", fields).status()).isEqualTo(403);
  }

  @Test
  void dueListAndCalendarAreFiles() {
    planned();
    String csv = technician.get("/due.csv").body();
    assertThat(csv).startsWith("\uFEFFsite,train,machine,tag,due_on,days_left");
    assertThat(csv.lines().filter(line -> line.contains("V-1"))).hasSize(1);
    aCalendarProgramReadsUnderItsSecretAddressUntilItIsRevoked();
    assertThat(technician.get("/outages.ics").body())
        .contains("SUMMARY:Outage O-", "DTSTART;VALUE=DATE:20260401");
  }

  private void aCalendarProgramReadsUnderItsSecretAddressUntilItIsRevoked() {
    technician.get("/calendar");
    String first = made();
    assertThat(first).matches("http://.*/calendar/[A-Za-z0-9_-]{43}/outages\\.ics");
    Visitor stranger = new Visitor(URI.create(first).resolve("/"));
    String path = URI.create(first).getPath();
    assertThat(stranger.get(path).body()).contains("SUMMARY:Outage O-", "END:VCALENDAR");
    assertThat(stranger.get("/outages.ics").status()).as("nothing else").isNotEqualTo(200);
    assertThat(technician.get("/calendar").body())
        .as("shown once")
        .contains("You made an address on")
        .doesNotContain(path);
    String second = URI.create(made()).getPath();
    assertThat(stranger.get(path).status()).as("another one ends the first").isEqualTo(404);
    assertThat(stranger.get(second).status()).isEqualTo(200);
    assertThat(technician.post("/calendar/revoke").status()).isEqualTo(303);
    assertThat(stranger.get(second).status()).isEqualTo(404);
    assertThat(stranger.get("/calendar/x/outages.ics").status()).isEqualTo(404);
  }

  private String made() {
    return technician.post("/calendar").page().select("#address").text();
  }
}
