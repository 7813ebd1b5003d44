package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import loopwright.matching.PartKind;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** Work that turns up meanwhile, told from the first refusal to the close-out. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class EmergentPagesTest {
  private static PackWorld world;

  /** V-1, V-2 and V-3 are in revision 1; V-4 holds a set and isn't taken. */
  @BeforeAll
  static void start() {
    world = new PackWorld();
    world.shop.point("V-4");
    world.shop.set(4);
    assertThat(world.shop.survey("V-4", "2026-02-21", "P-4", "C-4", "D-4").status()).isEqualTo(303);
    world.issue("first");
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Document pack() {
    return world.planner.get(world.outage() + "/pack").page();
  }

  private static Visitor.Answer add(String tag, String foundBy, String reason, String... works) {
    String path = world.outage() + "/emergent";
    Document page = world.planner.get(path).page();
    List<String> fields = new ArrayList<>();
    String loop = page.select("select[name=loop] option:contains(" + tag + ")").attr("value");
    fields.addAll(List.of("loop", loop.isEmpty() ? "1" : loop));
    fields.addAll(List.of("found-by", foundBy, "reason", reason));
    fields.addAll(List.of("on", "2026-03-01", "time", "09:00"));
    for (String work : works) {
      fields.addAll(List.of("work", work));
    }
    return world.planner.post(path, fields.toArray(String[]::new));
  }

  private static String take(String tag) {
    Document page = world.planner.get(world.outage() + "/scope?show=all").page();
    String loop = page.select("input[name=loop][aria-label=" + tag + "]").attr("value");
    return world
        .planner
        .post(world.outage() + "/scope", "do", "in", "reason", "x", "loop", loop, "work", "verify")
        .body();
  }

  private static Visitor.Answer bring(FilledSheet sheet) {
    Document page = world.technician().get(world.outage() + "/returns").page();
    Visitor.Answer sent =
        FilledForm.of(page, "form[enctype]")
            .choose("file", "pack.xlsx", sheet.workbook())
            .send(world.technician(), "do", "look");
    Visitor.Answer plan = world.technician().get(sent.location());
    return plan.page().select("main form[method=post]").isEmpty()
        ? plan
        : FilledForm.of(plan.page(), "main form[method=post]")
            .send(world.technician(), "confirmed", "yes");
  }

  @Test
  @Order(1)
  void beforeTheOutageIsUnderWayItIsNoEmergentWork() {
    assertThat(add("V-4", "T. Echnician", "x", "exchange").body()).contains("O-114");
    world.planner.get(world.outage());
    assertThat(world.planner.post(world.outage() + "/begin", "note", "down").status())
        .isEqualTo(303);
    assertThat(take("V-4")).contains("O-115");
    assertThat(
            world
                .technician()
                .post(world.outage() + "/emergent", "loop", "1", "reason", "x")
                .status())
        .isEqualTo(403);
  }

  @Test
  @Order(2)
  void itIsARevisionAtOnceWithWhoFoundItWhenAndWhy() throws IOException {
    assertThat(add("V-4", "", "crushed", "exchange").body()).contains("who found it");
    assertThat(add("V-4", "T. Echnician", "crushed").body()).contains("O-108");
    assertThat(add("V-4", "T. Echnician", "cable crushed", "exchange", "as-left").status())
        .isEqualTo(303);
    Document page = pack();
    assertThat(page.select("tbody tr").get(0).text())
        .contains("2", "Emergent work on V-4: cable crushed", "4");
    assertThat(page.select("h2:contains(Emergent work) + ul").text())
        .contains("V-4", "exchange parts", "found by T. Echnician, 2026-03-01 09:00");
    try (PDDocument pdf = Loader.loadPDF(world.file("2.pdf"))) {
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("Exchange parts (emergent)", "Found by T. Echnician", "cable crushed");
    }
    assertThat(world.planner.get(world.outage() + "/scope?show=taken").page().text())
        .contains("emergent: cable crushed");
  }

  /** Though the register changed since, which a usual revision would freeze. */
  @Test
  @Order(3)
  void sheetsOfTheOtherLoopsStayGood() {
    world.shop.part(PartKind.CABLE, "C-44", "4");
    assertThat(world.shop.survey("V-2", "2026-02-27", "P-2", "C-44", "D-2").status())
        .isEqualTo(303);
    assertThat(pack().select("h2:contains(Changed since) + div").text()).contains("V-2");
    assertThat(add("V-4", "T. Echnician", "gap moved", "set-gap").status()).isEqualTo(303);
    assertThat(pack().select("h2:contains(Changed since) + div").text())
        .as("it is not frozen by the way")
        .contains("V-2");
    FilledSheet first = FilledSheet.of(world.file("1.xlsx")).done("V-1");
    assertThat(bring(first).status()).isEqualTo(303);
    assertThat(closeOut("Done")).contains("V-1");
  }

  private static String closeOut(String heading) {
    return world
        .planner
        .get(world.outage() + "/close-out")
        .page()
        .select("h2:contains(" + heading + ") + div")
        .text();
  }

  @Test
  @Order(4)
  void aLoopThatCameBackAsDoneIsOpenAgainAndNeedsItsNewSheet() {
    assertThat(add("V-1", "N. Ight", "reads low", "dynamic").status()).isEqualTo(303);
    assertThat(closeOut("Nothing said"))
        .contains("V-1", "Emergent: dynamic check; found by N. Ight");
    Visitor.Answer old =
        bring(
            FilledSheet.of(world.file("1.xlsx"))
                .done("V-1")
                .set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "2026-03-01 09:30"));
    assertThat(old.page().text()).contains("B-207", "work and steps");
    Visitor.Answer fresh =
        bring(
            FilledSheet.of(world.file("4.xlsx"))
                .done("V-1")
                .set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "2026-03-01 09:30"));
    assertThat(fresh.status()).isEqualTo(303);
    assertThat(closeOut("Done")).contains("V-1", "Emergent");
    assertThat(
            bring(
                    FilledSheet.of(world.file("4.xlsx"))
                        .done("V-1")
                        .set("V-1", Item.MEASURED_AT, Column.AS_FOUND, "2026-03-01 09:45"))
                .page()
                .text())
        .as("done is done")
        .contains("B-226");
  }

  @Test
  @Order(5)
  void theCloseOutTellsWhatIsStillTemporary() throws IOException {
    world.technician().get("/loops/V-4/temporary");
    assertThat(
            world
                .technician()
                .post(
                    "/loops/V-4/temporary",
                    "slot",
                    "driver",
                    "return-on",
                    "2026-04-10",
                    "asked-by",
                    "P. Lanner",
                    "reason",
                    "delivery late")
                .status())
        .isEqualTo(303);
    assertThat(closeOut("Nothing said"))
        .contains("Still temporary: D-4 in driver, to come out by 2026-04-10: delivery late.");
    byte[] bytes = world.technician().bytes(world.outage() + "/close-out.pdf");
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      assertThat(new PDFTextStripper().getText(pdf)).contains("Still temporary", "Emergent");
    }
  }
}
