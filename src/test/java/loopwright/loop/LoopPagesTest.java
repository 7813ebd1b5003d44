package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import loopwright.matching.PartKind;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Channels;
import loopwright.plant.PointId;
import loopwright.plant.PointWatch;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteId;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.PartIdentity;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page of a loop, from nothing known to everything, for every role and in both units. */
@Tag("zone")
class LoopPagesTest {
  private static Shop shop;
  private static Visitor viewer;

  @BeforeAll
  static void start() {
    shop = new Shop();
    viewer = shop.app.as("viewer");
    shop.point("NOTHING");
    long told = shop.point("V-1");
    shop.point("LONG");
    shop.point("BARE");
    shop.set(1);
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.CABLE, "C-45", "4.5");
    shop.part(PartKind.DRIVER, "D-2", "5");
    ComponentDetails bare =
        ComponentDetails.of(
            PartKind.CABLE, new PartIdentity("<b>Nord & Ling</b>", "\"X\"", "<i>1</i>", ""));
    shop.part(bare, ComponentFacts.NOTHING_KNOWN);
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
    shop.survey("LONG", "2026-02-03", "P-2", "C-45", "D-2");
    shop.survey("BARE", "2026-02-04", "?", "<i>1</i>", "");
    Channels channels = new Channels(PointWatch.NOBODY);
    shop.app.write(
        tx -> {
          ChannelId id = channels.add(tx, new SiteId(1), new Channel.Position("R1", 3, 2));
          channels.link(tx, new PointId(told), id, ChannelRole.values()[0]);
          channels.set(
              tx,
              id,
              ChannelSetting.of(
                  SettingBasis.APPROVED,
                  Instant.parse("2026-01-01T00:00:00Z"),
                  ScaleFactor.millivoltsPerMil("200")));
          return true;
        });
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static Document page(Visitor visitor, String tag, String... headers) {
    Visitor.Answer answer = visitor.get("/loops/" + tag, headers);
    assertThat(answer.status()).isEqualTo(200);
    return answer.page();
  }

  @Test
  void aLoopOfWhichNothingIsKnownHasAPage() {
    Document page = page(viewer, "NOTHING");
    assertThat(page.select("h1 + p .verdict").text()).isEqualTo("unknown");
    assertThat(page.select("main").text())
        .contains("Nobody has recorded anything about this loop yet")
        .contains("No calibration of this loop or of these parts is on record");
    assertThat(page.select("main svg")).isNotEmpty();
  }

  @Test
  void aWholeLoopSaysWhatIsFittedJudgedAndTold() {
    Document page = page(viewer, "v-1");
    assertThat(page.select("h1 .n").text()).as("as it is written").isEqualTo("V-1");
    assertThat(page.select(".trail").text()).contains("Site K-301", "K-301", "Machine K-301");
    assertThat(page.select("main").text())
        .contains("probe P-1 Nordling X9 · family Q8 1.0 m (3.3 ft)")
        .contains("R1 slot 3 channel 2 approved: scale factor 200 mV/mil")
        .contains("No as-left calibration is on record")
        .contains("2026-02-01 08:00 survey");
    assertThat(page.select("h2:contains(What is fitted) + div tbody tr")).hasSize(3);
  }

  @Test
  void feetComeFirstForWhoReadsFeet() {
    Document page = page(viewer, "LONG", "Cookie", "units=mil");
    assertThat(page.select("main").text())
        .contains("14.8 ft (4.5 m)")
        .contains("0.5 m (1.6 ft) too long");
    assertThat(page.select("h1 + p .verdict").text()).isEqualTo("refused");
  }

  @Test
  void whatPeopleTypedIsShownAndNeverRun() {
    Document page = page(viewer, "BARE");
    assertThat(page.select("main").text())
        .contains("<i>1</i>")
        .contains("<b>Nord & Ling</b> \"X\"");
    assertThat(page.select("main b:contains(Nord), main i:contains(1)")).isEmpty();
    assertThat(page.select("svg").outerHtml()).doesNotContain("<i>1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"technician", "planner", "engineer", "administrator", "viewer"})
  void everyRoleReadsAndOnlySomeAct(String role) {
    Visitor visitor = shop.app.as(role);
    Document page = page(visitor, "V-1");
    List<String> acts = page.select("main .acts a").eachAttr("href");
    for (String act : acts) {
      assertThat(visitor.get(act).status()).as("%s offers %s", role, act).isEqualTo(200);
    }
    boolean records = visitor.get("/loops/V-1/survey").status() == 200;
    assertThat(acts.contains("/loops/V-1/survey")).isEqualTo(records);
  }

  @Test
  void whatIsNoLoopIsNotFound() {
    for (String tag : List.of("NO-SUCH", "%00", "%F0%9F%98%80", "x".repeat(3000))) {
      assertThat(viewer.get("/loops/" + tag).status()).as(tag).isIn(400, 404, 414);
    }
  }
}
