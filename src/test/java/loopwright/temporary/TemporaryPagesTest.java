package loopwright.temporary;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import loopwright.matching.PartKind;
import loopwright.pack.PackWorld;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * What speaks for loops beside the rules: parts fitted for a time, suspicions, the newest gap
 * round. Told from beginning to end on 2026-03-01; each step stands on the ones before.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TemporaryPagesTest {
  private static final String V1 = "/loops/V-1/temporary";

  private static PackWorld world;

  @BeforeAll
  static void start() {
    world = new PackWorld();
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Visitor.Answer mark(String slot, String day, String reason) {
    world.technician().get(V1);
    return world
        .technician()
        .post(
            V1,
            "slot",
            slot,
            "return-on",
            day,
            "instead-of",
            "P-77",
            "asked-by",
            "P. Lanner",
            "reason",
            reason);
  }

  private static String scope(String tag) {
    return world
        .planner
        .get(world.outage() + "/scope?show=all")
        .page()
        .select("tbody tr:contains(" + tag + ")")
        .text();
  }

  @Test
  @Order(1)
  void aPartIsMarkedWithADayAReasonAndWhoAskedForIt() {
    assertThat(world.technician().get(V1).page().select("select[name=slot] option").eachText())
        .contains("probe: probe P-1", "driver: driver D-1");
    Visitor.Answer past = mark("probe", "2026-02-27", "the right one is ordered");
    assertThat(past.body()).contains("TF-102");
    assertThat(past.page().select("input[name=instead-of]").val()).isEqualTo("P-77");
    assertThat(mark("probe", "some day", "x").status()).isEqualTo(422);
    assertThat(mark("path-2", "2026-03-10", "x").body()).contains("TF-101");
    assertThat(mark("probe", "2026-03-10", "the right one is ordered").status()).isEqualTo(303);
    assertThat(mark("probe", "2026-03-11", "again").body()).contains("TF-103");
    String loop = world.technician().get("/loops/V-1").page().text();
    assertThat(loop)
        .contains("P-1 in V-1, probe, to come out by 2026-03-10, instead of P-77")
        .contains("asked for by P. Lanner");
    Document parts = world.technician().get("/parts?q=P-1").page();
    String part = parts.select("a[href^=/parts/]:contains(P-1)").attr("href");
    assertThat(world.technician().get(part).page().text()).contains("Fitted for a time");
  }

  @Test
  @Order(2)
  void whatIsDueInTheWindowIsSuggestedAndInTheCalendar() {
    assertThat(scope("V-1"))
        .contains("temporary fit", "P-1 in probe, to come out by 2026-03-10 (instead of P-77)");
    assertThat(scope("V-2")).doesNotContain("temporary fit");
    assertThat(world.planner.get("/outages.ics").body())
        .contains("UID:temporary-1@", "DTSTART;VALUE=DATE:20260310");
    assertThat(world.planner.get("/due.csv").body()).doesNotContain("to come out by");
    assertThat(world.planner.get("/").page().text()).doesNotContain("Still temporary");
  }

  @Test
  @Order(3)
  void anOverdueOneStandsOnTheFirstPageUntilItIsSettled() {
    long point =
        world.shop.app.write(
            tx -> {
              TemporaryStore store = new TemporaryStore();
              TemporaryFit first = store.one(tx.sql(), 1).orElseThrow();
              store.step(tx, 1, LocalDate.parse("2026-02-20"), "said on the telephone");
              return first.point();
            });
    assertThat(point).isPositive();
    assertThat(world.planner.get("/").page().text())
        .contains("Still temporary and overdue: P-1 in probe, to come out by 2026-02-20");
    assertThat(world.planner.get("/due.csv").body()).contains("to come out by 2026-02-20");
    assertThat(world.planner.get("/temporary-fits").page().select("tbody tr").text())
        .contains("V-1", "overdue");
    assertThat(settle("extended", "2026-02-28", "later").body()).contains("TF-102");
    assertThat(settle("extended", "2026-03-20", "").body()).contains("note");
    assertThat(settle("extended", "2026-03-20", "delivery late").status()).isEqualTo(303);
    assertThat(world.planner.get(V1).page().select("tbody tr").text())
        .contains("2026-03-20", "delivery late", "still temporary");
    assertThat(world.planner.get("/").page().text()).doesNotContain("Still temporary");
    assertThat(
            world
                .technician()
                .post(V1 + "/settle", "fit", "1", "do", "stays", "note", "x")
                .status())
        .isEqualTo(403);
  }

  private static Visitor.Answer settle(String what, String day, String note) {
    world.planner.get(V1);
    return world.planner.post(
        V1 + "/settle", "fit", "1", "do", what, "other-day", day, "note", note);
  }

  @Test
  @Order(4)
  void theExchangeThatTakesThePartOutEndsIt() {
    world.shop.part(PartKind.PROBE, "P-9", "1");
    assertThat(world.shop.survey("V-1", "2026-03-01", "P-9", "C-1", "D-1").status()).isEqualTo(303);
    assertThat(world.planner.get(V1).page().select("tbody tr").text())
        .contains("over: the part came out");
    assertThat(world.technician().get("/loops/V-1").page().text())
        .doesNotContain("Fitted for a time P-1");
    assertThat(world.planner.get("/temporary-fits").page().text())
        .contains("No part is fitted for a time only.");
    assertThat(scope("V-1")).doesNotContain("temporary fit");
    assertThat(settle("stays", "", "x").body()).contains("TF-104");
  }

  @Test
  @Order(5)
  void aPartThatStaysForGoodIsNoLongerTemporary() {
    assertThat(mark("driver", "2026-03-05", "trial").status()).isEqualTo(303);
    world.planner.get(V1);
    assertThat(
            world
                .planner
                .post(V1 + "/settle", "fit", "2", "do", "stays", "note", "does as well")
                .status())
        .isEqualTo(303);
    assertThat(world.planner.get(V1).page().select("tbody tr").text())
        .contains("stays for good", "does as well");
    assertThat(world.planner.get("/temporary-fits").page().text()).doesNotContain("D-1");
  }

  @Test
  @Order(6)
  void aKeptSuspicionIsSuggestedUntilItIsSettled() {
    String query =
        "loop=V-2&system-length=5.0&baseline=line&baseline-gap=50&baseline-gap-unit=mil"
            + "&baseline-volts=-9.0&baseline-sensitivity=202&baseline-sensitivity-unit=mV%2Fmil"
            + "&volts=-9.0&sensitivity=170&sensitivity-unit=mV%2Fmil&measured-at=driver&together=yes";
    Visitor technician = world.technician();
    assertThat(technician.get("/cause?" + query).status()).isEqualTo(200);
    String keep = "/cause/suspicions?" + query;
    Visitor.Answer without = technician.post(keep, "note", "");
    assertThat(without.status()).isEqualTo(422);
    assertThat(without.body()).contains("why it is kept");
    assertThat(technician.post(keep, "note", "read the label").status()).isEqualTo(303);
    assertThat(technician.post(keep, "note", "again").body()).contains("Q-124");
    assertThat(scope("V-2")).contains("suspected cause", "read the label", "%");
    assertThat(technician.get("/loops/V-2").page().text()).contains("Suspected:");
    String settle = "/cause/suspicions/settle?loop=V-2";
    assertThat(technician.post(settle, "suspicion", "1", "reason", "").status()).isEqualTo(422);
    assertThat(
            technician
                .post("/cause/suspicions/settle?loop=V-1", "suspicion", "1", "reason", "other loop")
                .body())
        .contains("Q-125");
    assertThat(technician.post(settle, "suspicion", "1", "reason", "label was right").status())
        .isEqualTo(303);
    assertThat(technician.post(settle, "suspicion", "1", "reason", "again").body())
        .contains("Q-125");
    assertThat(scope("V-2")).doesNotContain("suspected cause");
  }

  @Test
  @Order(7)
  void theNewestGapRoundSuggestsUntilANewerReadingOrRound() {
    bring("first.csv", "V-2;-10;2026-02-01 08:00;rest\nV-1;-10;2026-02-01 08:00;rest\n");
    assertThat(scope("V-2")).doesNotContain("gap round");
    bring("second.csv", "V-2;-8.9;2026-02-10 08:00;rest\nV-1;-10.1;2026-02-10 08:00;rest\n");
    assertThat(scope("V-2")).contains("gap round", "second.csv", "as if nearer");
    assertThat(scope("V-1")).doesNotContain("gap round");
    Document page = world.planner.get(world.outage() + "/scope?show=gap+round").page();
    assertThat(page.select("tbody a[href^=/gap-rounds/]")).hasSize(1);
    bring("third.csv", "V-2;-8.9;2026-02-20 08:00;rest\n");
    assertThat(scope("V-2")).as("as at the last round").doesNotContain("gap round");
  }

  private static void bring(String name, String rows) {
    Visitor.Answer answer =
        FilledForm.of(world.planner.get("/gap-rounds").page(), "form[enctype]")
            .choose("file", name, "tag;volts;time;machine_state\n" + rows)
            .send(world.planner, "do", "bring");
    assertThat(answer.status()).isEqualTo(303);
  }
}
