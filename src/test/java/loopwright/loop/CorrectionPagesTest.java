package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Corrections of the record over HTTP: preview, record, what was believed before, wrong input. */
@Tag("zone")
class CorrectionPagesTest {
  private static final String LOOP = "/loops/K301-VX1";
  private static final String PATH = LOOP + "/correction";

  private LoopWorld world;

  /** XC-1 since 1 February, XC-3 since 10 February, recorded on 1 March; it is 2 March. */
  @BeforeEach
  void start() {
    world = new LoopWorld();
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
    assertThat(world.survey(1, "2026-02-10", "08:00", "XC-3").status()).isEqualTo(303);
    world.app.clock.forward(Duration.ofDays(1));
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Map<String, String> fields(String part, String from, String until) {
    Map<String, String> fields = new HashMap<>();
    fields.put("slot", "path-1");
    fields.put("what", "part");
    fields.put("part", part);
    fields.put("from", from);
    fields.put("until", until);
    fields.put("reason", "photograph of the day shows its label");
    fields.put("version", version(PATH));
    return fields;
  }

  private String version(String path) {
    return world.technician.get(path).page().select("input[name=version]").attr("value");
  }

  private Visitor.Answer post(String path, Map<String, String> fields) {
    return world.technician.post(path, Shop.flat(fields));
  }

  /** Sends it, then again with what the preview carries. */
  private Visitor.Answer correct(String path, Map<String, String> fields) {
    Visitor.Answer preview = post(path, fields);
    assertThat(preview.status()).as(preview.page().select(".complaints").text()).isEqualTo(200);
    fields.put("seen", preview.page().select("input[name=seen]").attr("value"));
    return post(path, fields);
  }

  private String cable(String query) {
    return world.technician.get(LOOP + query).page().select("td[data-label=Part]").get(1).text();
  }

  private static String complaint(Visitor.Answer answer, String field) {
    return answer.page().select("#" + field + "-about .complaint").text();
  }

  @Test
  void thePastIsRewrittenAndWhatWasBelievedStaysReadable() {
    Visitor.Answer answer = correct(PATH, fields("XC-4", "2026-02-03", "2026-02-10 08:00"));
    assertThat(answer.location()).isEqualTo(LOOP);
    assertThat(cable("?at=2026-02-02")).startsWith("XC-1");
    assertThat(cable("?at=2026-02-05")).startsWith("XC-4");
    assertThat(cable("")).startsWith("XC-3");
    assertThat(cable("?at=2026-02-05&known=2026-03-01+11:15")).startsWith("XC-1");
    Document loop = world.technician.get(LOOP).page();
    assertThat(loop.select("ol.story").text())
        .contains("correction")
        .contains("Extension cable from 2026-02-03 00:00 until 2026-02-10 08:00: XC-4; not XC-1.")
        .contains("photograph of the day");
  }

  @Test
  void thePreviewTellsEverythingAndStoresNothing() {
    Visitor.Answer preview = post(PATH, fields("XC-9", "2026-02-10 08:00", ""));
    assertThat(preview.status()).isEqualTo(200);
    assertThat(preview.page().select("h2").eachText()).contains("What it changes");
    assertThat(preview.page().select("main").text())
        .contains("XC-9 2026-02-10 08:00 now as corrected")
        .contains("afterwards: refused");
    assertThat(preview.page().select("textarea[name=reason]").text()).contains("photograph");
    assertThat(cable("")).startsWith("XC-3");
    assertThat(world.technician.get(LOOP).page().select("ol.story").text())
        .doesNotContain("correction");
  }

  @Test
  void whatWasChangedAfterThePreviewIsShownAgainFirst() {
    Map<String, String> fields = fields("XC-4", "2026-02-10 08:00", "");
    fields.put("seen", post(PATH, fields).page().select("input[name=seen]").attr("value"));
    fields.put("part", "XC-2");
    Visitor.Answer again = post(PATH, fields);
    assertThat(again.status()).isEqualTo(200);
    assertThat(cable("")).startsWith("XC-3");
  }

  @Test
  void oneStayThatTheRecordHadInPiecesBecomesOne() {
    correct(PATH, fields("XC-3", "2026-02-01 08:00", "2026-02-10 08:00"));
    Document page = world.technician.get(PATH).page();
    assertThat(page.select("td[data-label=What]").eachText()).doesNotContain("XC-1");
    assertThat(page.select("tr:contains(XC-3)").text()).contains("2026-02-01 08:00 now");
  }

  @Test
  void aPartThatStandsElsewhereInThatTimeIsNamedWithPlaceAndChange() {
    world.survey(2, "2026-02-05", "08:00", "XC-4");
    Visitor.Answer answer = post(PATH, fields("XC-4", "2026-02-04", "2026-02-07"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text())
        .contains("Extension cable XC-4 is already recorded at K301-VX2, extension cable, from")
        .contains("from 2026-02-05 08:00 on")
        .contains("survey by")
        .contains("seen at the junction box");
    assertThat(correct(PATH, fields("XC-4", "2026-02-04", "2026-02-05 08:00")).status())
        .isEqualTo(303);
  }

  @Test
  void wrongMomentsAndPartsAreAskedBackAtTheirField() {
    String[][] wrong = {
      {"until", "XC-4", "2026-02-05", "2026-02-03", "not after the beginning, 2026-02-05 00:00"},
      {"until", "XC-4", "2026-02-05", "2026-02-05", "not after the beginning"},
      {"until", "XC-4", "2026-02-05", "2026-03-09", "in the future"},
      {"from", "XC-4", "2026-03-09", "", "in the future: at the site it is 2026-03-02 11:15"},
      {"from", "XC-4", "2025-03-30 02:30", "", "were put forward past 02:30"},
      {
        "from",
        "XC-4",
        "2025-10-26 02:30",
        "",
        "showed 02:30 twice. Which do you mean: "
            + "2025-10-26T02:30+02:00 or, after they were put back, 2025-10-26T02:30+01:00?"
      },
      {"from", "XC-4", "", "", "is no moment"},
      {"part", "XC-4", "2026-01-02", "2026-02-01", "is on record only since 2026-01-10 06:00"},
      {"part", "XC-77", "2026-02-03", "", "No part in the register is called XC-77"},
      {"part", "PR-1", "2026-02-03", "", "can't sit in the slot extension cable"},
      {"part", "", "2026-02-03", "", "Give the serial"},
    };
    for (String[] row : wrong) {
      Map<String, String> fields = fields(row[1], row[2], row[3]);
      Visitor.Answer answer = post(PATH, fields);
      assertThat(answer.status()).as(row[4]).isEqualTo(422);
      assertThat(complaint(answer, row[0])).contains(row[4]);
      assertThat(answer.page().select("input[name=until]").val()).isEqualTo(row[3]);
    }
    Map<String, String> noReason = fields("XC-4", "2026-02-03", "2026-02-05");
    noReason.put("reason", " ");
    assertThat(complaint(post(PATH, noReason), "reason")).isNotEmpty();
    assertThat(cable("?at=2026-02-05")).startsWith("XC-1");
  }

  @Test
  void sayingWhatIsOnRecordChangesNothing() {
    Visitor.Answer answer = post(PATH, fields("XC-3", "2026-02-12", ""));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains("says that").contains("L-109");
  }

  @Test
  void aFormOpenedBeforeSomebodyChangedTheLoopIsToldWhoAndKeepsWhatWasTyped() {
    Map<String, String> fields = fields("XC-4", "2026-02-03", "2026-02-05");
    Visitor.Answer preview = post(PATH, fields);
    fields.put("seen", preview.page().select("input[name=seen]").attr("value"));
    world.survey(1, "2026-02-20", "08:00", "XC-2");
    Visitor.Answer answer = post(PATH, fields);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.page().select(".complaints").text())
        .contains("recorded a survey here on 2026-03-02 11:15, after you opened this form");
    assertThat(answer.page().select("input[name=part]").val()).isEqualTo("XC-4");
    assertThat(cable("?at=2026-02-04")).startsWith("XC-1");
  }

  @Test
  void whoOnlyReadsMayNotCorrect() {
    Visitor viewer = world.app.as("viewer");
    assertThat(viewer.get(PATH).status()).isEqualTo(403);
    assertThat(viewer.get(LOOP).page().select("a[href$=/correction]")).isEmpty();
  }
}
