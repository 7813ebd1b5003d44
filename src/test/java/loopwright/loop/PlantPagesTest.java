package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.testing.RunningApp;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The first page, the plant list and the page of a train, from empty to full. */
@Tag("zone")
class PlantPagesTest {
  private Shop shop;
  private Visitor technician;

  @BeforeEach
  void start() {
    shop = new Shop();
    technician = shop.technician;
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  private Document page(String path, String... headers) {
    Visitor.Answer answer = technician.get(path, headers);
    assertThat(answer.status()).as(path).isEqualTo(200);
    return answer.page();
  }

  private void threeLoops() {
    shop.point("GOOD");
    shop.point("LONG");
    shop.point("NOTHING");
    shop.set(1);
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.CABLE, "C-45", "4.5");
    shop.part(PartKind.DRIVER, "D-2", "5");
    shop.survey("GOOD", "2026-02-01", "P-1", "C-1", "D-1");
    shop.survey("LONG", "2026-02-01", "P-2", "C-45", "D-2");
    shop.survey("NOTHING", "2026-02-01", "?", "", "");
  }

  @Test
  void anEmptyRegisterSaysWhatToDo() {
    try (RunningApp empty = new RunningApp()) {
      Visitor viewer = empty.as("viewer");
      assertThat(viewer.get("/").page().select(".empty").text())
          .contains("No loop is registered yet");
      assertThat(viewer.get("/plant").page().select(".empty").text())
          .contains("No site is registered yet");
      assertThat(viewer.get("/calibrations").page().select(".empty").text())
          .contains("No calibration is on record here");
      assertThat(viewer.get("/plant/trains/1").status()).isEqualTo(404);
    }
  }

  @Test
  void aTrainWithoutPointsIsListed() {
    assertThat(page("/plant").select("tbody tr").text()).contains("K-301 Train K-301 0");
    Document train = page("/plant/trains/1");
    assertThat(train.select("h1").text()).contains("K-301").contains("Train K-301");
    for (String id : List.of("2", "x", "-1", "99999999999999999999")) {
      assertThat(technician.get("/plant/trains/" + id).status()).as(id).isEqualTo(404);
    }
  }

  @Test
  void theFirstPageListsWorstFirst() {
    threeLoops();
    Document all = page("/");
    assertThat(all.select("h1").text()).contains("3 · worst first · 3 loops");
    assertThat(all.select("tbody tr td:eq(0)").eachText())
        .containsExactly("refused", "unknown", "attention");
    assertThat(all.select("tbody tr td:eq(1) a").eachText())
        .containsExactly("LONG", "NOTHING", "GOOD");
    assertThat(all.select("tbody tr").first().text())
        .contains("K-301, Site K-301")
        .contains("0.5 m (1.6 ft) too long")
        .contains("28 days")
        .contains("Fit a 4.0 m cable instead");
    assertThat(all.select(".chip").eachText())
        .startsWith("all 3", "refused 1", "unknown 1", "attention 1");
    assertThat(page("/?verdict=refused").select("tbody tr td:eq(1) a").eachText())
        .containsExactly("LONG");
    assertThat(page("/?verdict=refused&train=1").select(".chip").eachText())
        .contains("one train only ×");
    assertThat(page("/?train=2").select(".empty").text()).isNotEmpty();
    for (String odd :
        List.of("/?verdict=%3Cb%3E", "/?train=x", "/?train=99999999999999999999&verdict=")) {
      assertThat(page(odd).select("tbody tr")).as(odd).hasSize(3);
    }
  }

  @Test
  void aTrainShowsEveryPointInBothUnits() {
    threeLoops();
    assertThat(page("/plant").select("tbody tr").text())
        .contains("K-301 Train K-301 3")
        .contains("refused 1")
        .contains("unknown 1")
        .contains("attention 1");
    Document metric = page("/plant/trains/1");
    assertThat(metric.select("tr:contains(LONG)").text())
        .contains("+0.5 m")
        .contains("P-2 · C-45 · D-2");
    assertThat(metric.select("tr:contains(NOTHING) a").eachText()).containsExactly("NOTHING");
    Document feet = page("/plant/trains/1", "Cookie", "units=mil");
    assertThat(feet.select("tr:contains(LONG)").text())
        .contains("+1.6 ft")
        .doesNotContain("+0.5 m");
  }

  @Test
  void aLoopThatNobodyEverLookedAtNeedsSomebodyToo() {
    Visitor engineer = shop.app.as("engineer");
    Map<String, String> point = Shop.fields(engineer.get("/points/new?train=1").page());
    point.putAll(
        Map.of("tag", "FRESH", "kind", "radial vibration", "machine", "1", "reason", "drawing 7"));
    assertThat(engineer.post("/points/new?train=1", Shop.flat(point)).status()).isEqualTo(303);
    Document first = page("/");
    assertThat(first.select("tbody tr").text()).contains("unknown FRESH");
    assertThat(first.select("h1").text()).contains("1 · worst first · 1 loop in the register");
    assertThat(page("/plant").select("tbody tr").text()).contains("unknown 1");
  }

  @Test
  void aRetiredPointNeedsNobody() {
    threeLoops();
    Visitor engineer = shop.app.as("engineer");
    Map<String, String> point = Shop.fields(engineer.get("/points/2/edit").page());
    point.putAll(Map.of("state", "retired", "reason", "machine sold"));
    assertThat(engineer.post("/points/2/edit", Shop.flat(point)).status()).isEqualTo(303);
    assertThat(page("/").select("tbody tr td:eq(1) a").eachText())
        .containsExactly("NOTHING", "GOOD");
    assertThat(page("/").select("h1").text()).contains("2 · worst first · 2 loops");
    assertThat(page("/plant/trains/1").select("tr:contains(LONG)").text()).contains("retired");
    point = Shop.fields(engineer.get("/points/2/edit").page());
    point.putAll(Map.of("state", "in use", "reason", "bought back"));
    assertThat(engineer.post("/points/2/edit", Shop.flat(point)).status()).isEqualTo(303);
    assertThat(page("/").select("tbody tr td:eq(1) a").eachText()).contains("LONG");
  }

  @Test
  void unknownsOfASiteBeingReadInComeAsOneRow() {
    threeLoops();
    shop.point("NOTHING-2");
    shop.survey("NOTHING-2", "2026-02-02", "", "?", "");
    shop.app.write(
        tx -> {
          tx.sql().execute("UPDATE site SET adopting = TRUE");
          return true;
        });
    Document first = page("/");
    assertThat(first.select("tbody tr td:eq(1)").eachText())
        .containsExactly(
            "LONG K-301, Site K-301", "2 loops K-301, Site K-301", "GOOD K-301, Site K-301");
    assertThat(first.select("tbody tr").get(1).text()).contains("Facts are missing");
    assertThat(page("/plant").select("h2").text()).contains("still being read in");
  }
}
