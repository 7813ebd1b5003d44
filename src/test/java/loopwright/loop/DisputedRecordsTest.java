package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Two surveys that claim one cable for one moment: told at both points until somebody decides. */
@Tag("zone")
class DisputedRecordsTest {
  private LoopWorld world;

  @BeforeEach
  void start() {
    world = new LoopWorld();
    world.survey(1, "2026-02-10", "08:00", "XC-1");
    assertThat(world.survey(2, "2026-02-10", "08:00", "XC-1").status()).isEqualTo(303);
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Document page(String path) {
    return world.technician.get(path).page();
  }

  private String cable(int point) {
    return page("/loops/K301-VX" + point).select("td[data-label=Part]").get(1).text();
  }

  /** Follows the panel's link, fills in what sat there, looks at the preview and records it. */
  private Visitor.Answer decide(int misreadAt, String what, String part) {
    String tag = "K301-VX" + misreadAt;
    String form =
        page("/loops/K301-VX1").select("a:contains(It was misread at " + tag + ")").attr("href");
    Map<String, String> fields = Shop.fields(page(form));
    assertThat(fields).containsEntry("from", "2026-02-10 08:00").containsEntry("slot", "path-1");
    fields.putAll(Map.of("what", what, "part", part, "reason", "read again"));
    Document preview = world.technician.post("/loops/" + tag + "/correction", flat(fields)).page();
    assertThat(preview.select("main").text()).contains("This decides a dispute");
    fields.put("seen", preview.select("input[name=seen]").attr("value"));
    return world.technician.post("/loops/" + tag + "/correction", flat(fields));
  }

  private static String[] flat(Map<String, String> fields) {
    return Shop.flat(fields);
  }

  @Test
  void bothLoopsThePartAndTheFirstPageTellOfIt() {
    assertThat(cable(1)).startsWith("XC-1");
    assertThat(cable(2)).startsWith("not known");
    for (int point : new int[] {1, 2}) {
      Document loop = page("/loops/K301-VX" + point);
      assertThat(loop.select("h2").eachText()).contains("Disputed record");
      assertThat(loop.select("tr:contains(Not fitted elsewhere)").text())
          .contains("Extension cable XC-1 was found here and at K301-VX" + (3 - point))
          .contains("for one moment, 2026-02-10 08:00 at the site")
          .contains("attention");
      assertThat(loop.select("ol.story").text()).contains("disputed");
    }
    assertThat(page("/parts/" + world.id("XC-1").number()).select("main").text())
        .contains("Disputed record");
    String first = page("/").select("tr:contains(Disputed)").text();
    assertThat(first)
        .contains("K301-VX2")
        .contains("Read the serial at K301-VX1 and at K301-VX2, then correct");
  }

  @Test
  void theSameSurveyAgainIsNoSecondDispute() {
    world.survey(2, "2026-02-10", "08:00", "XC-1");
    assertThat(page("/loops/K301-VX2").select("h2:contains(Disputed)")).hasSize(1);
    assertThat(page("/").select("tr:contains(Disputed)")).hasSize(1);
  }

  @Test
  void aSurveyOfALaterMomentIsAMoveAndDecidesNothing() {
    world.survey(3, "2026-02-12", "08:00", "XC-1");
    assertThat(cable(3)).startsWith("XC-1");
    assertThat(cable(1)).startsWith("not known");
    assertThat(page("/").select("tr:contains(Disputed)")).hasSize(1);
  }

  @Test
  void decidedAgainstTheClaimOnRecordTheOtherOneTakesItsPlace() {
    assertThat(decide(1, "part", "XC-2").status()).isEqualTo(303);
    assertThat(cable(1)).startsWith("XC-2");
    assertThat(cable(2)).startsWith("XC-1");
    assertThat(page("/").select("tr:contains(Disputed)")).isEmpty();
    assertThat(page("/loops/K301-VX2").select("h2:contains(Disputed)")).isEmpty();
  }

  @Test
  void decidedAgainstTheLaterClaimWithoutKnowingWhatSatThereTheFirstStands() {
    assertThat(decide(2, "unknown", "").status()).isEqualTo(303);
    assertThat(cable(1)).startsWith("XC-1");
    assertThat(cable(2)).startsWith("not known");
    assertThat(page("/").select("tr:contains(Disputed)")).isEmpty();
  }

  @Test
  void asKnownBeforeTheDecisionItIsStillInDispute() {
    decide(2, "part", "XC-3");
    String decided = page("/record").select("a[href^=/record/]").first().attr("href");
    long entry = Long.parseLong(decided.replaceAll("\\D", ""));
    Document before = page("/loops/K301-VX2?known=" + (entry - 1));
    assertThat(before.select("h2").eachText()).contains("Disputed record");
    assertThat(before.select("a:contains(It was misread)")).isEmpty();
    assertThat(page("/loops/K301-VX2?known=" + entry).select("h2").eachText())
        .doesNotContain("Disputed record");
  }
}
