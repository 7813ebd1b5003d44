package loopwright.closeout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import loopwright.matching.PartKind;
import loopwright.pack.PackWorld;
import loopwright.testing.Visitor;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** From the plan to the close-out, through the pages, with a sheet that a program filled in. */
class CloseOutPagesTest {
  private PackWorld world;

  @BeforeEach
  void start() {
    world = new PackWorld();
    world.issue("first");
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Document closeOut() {
    return world.planner.get(world.outage() + "/close-out").page();
  }

  private Visitor.Answer close() {
    closeOut();
    return world.planner.post(world.outage() + "/close", "note", "handed back");
  }

  private void begin() {
    world.planner.get(world.outage());
    assertThat(world.planner.post(world.outage() + "/begin", "note", "unit is down").status())
        .isEqualTo(303);
  }

  private void say(String tag, String outcome, String reason) {
    Document page = world.technician().get(world.outage() + "/returns").page();
    String loop = page.select("input[name=loop][aria-label=" + tag + "]").attr("value");
    assertThat(
            world
                .technician()
                .post(world.outage() + "/say", "loop", loop, "outcome", outcome, "reason", reason)
                .status())
        .isEqualTo(303);
  }

  @Test
  void fromTheFilledSheetToTheClosedOutageAndTheNextOne() throws IOException {
    begin();
    world.bringBackDone("V-1", "V-2");
    Document page = closeOut();
    assertThat(page.select("h1 + p").text()).isEqualTo("2 done, 1 nothing said.");
    assertThat(close().page().select(".complaints").text()).contains("nothing is said yet of V-3");
    say("V-3", "not done", "no scaffold");
    String next = world.plan("Autumn");
    Document before = closeOut();
    assertThat(before.select("button").eachText()).contains("Carry over 1 loop");
    Visitor.Answer carried =
        world.planner.post(
            world.outage() + "/carry-over", "to", next.substring(next.lastIndexOf('/') + 1));
    assertThat(carried.location()).isEqualTo(next + "/scope?show=taken");
    assertThat(world.planner.get(carried.location()).page().select("tbody tr:contains(V-3)").text())
        .contains("carried over from O-1, not done: no scaffold");
    assertThat(close().status()).isEqualTo(303);
    Document closed = closeOut();
    assertThat(closed.select("h1").text()).contains("closed");
    assertThat(closed.select("h2:contains(Not done) + div").text()).contains("V-3", "no scaffold");
    assertThat(closed.select("h2:contains(Done) + div tr:contains(V-1)").text())
        .contains("matches", "As found and as left C-");
    assertThat(closed.select("form[action$=close]")).isEmpty();
    assertThat(
            world
                .planner
                .post(
                    world.outage() + "/scope",
                    "do",
                    "in",
                    "reason",
                    "x",
                    "loop",
                    "1",
                    "work",
                    "verify")
                .body())
        .contains("O-104");
    byte[] pdf = world.technician().bytes(world.outage() + "/close-out.pdf");
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(document))
          .contains(
              "Close-out of O-1", "2 done, 1 not done", "no scaffold", "Closed", "handed back");
    }
  }

  @Test
  void aLoopThatMayNotGoBackToServiceKeepsItOpen() {
    begin();
    world.bringBackDone("V-1", "V-2");
    say("V-3", "failed", "probe dead");
    world.shop.part(PartKind.CABLE, "C-44", "4");
    assertThat(world.shop.survey("V-2", "2026-03-01", "P-2", "C-44", "D-2").status())
        .isEqualTo(303);
    Visitor.Answer refused = close();
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select(".complaints").text())
        .contains("V-2 came back as done but may not go back to service", "Z-102");
    assertThat(refused.page().select("tr:contains(V-2)").text())
        .contains("Survey of 2026-03-01 08:00");
  }

  @Test
  void itIsClosedOnlyOnceItIsUnderWayAndByAPlanner() {
    assertThat(close().page().select(".complaints").text())
        .contains("Say first that it is under way");
    assertThat(world.technician().post(world.outage() + "/close", "note", "x").status())
        .isEqualTo(403);
    assertThat(world.planner.post(world.outage() + "/carry-over", "to", "O-99").body())
        .contains("Z-103");
  }
}
