package loopwright.scan;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.matching.PartKind;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.PartIdentity;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the invented plant does not have: serials that stand twice, adapters, driver boxes. */
class ScanShopTest {
  private static Shop shop;

  @BeforeAll
  static void start() {
    shop = new Shop();
    shop.set(1);
    shop.point("K301-VX1");
    shop.point("K301-VX2");
    assertThat(shop.survey("K301-VX1", "2026-02-01", "P-1", "C-1", "D-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static String part(ComponentId id) {
    return "&part=" + id.number();
  }

  private static Document page(String query) {
    Visitor.Answer answer = shop.technician.get("/scan?" + query);
    assertThat(answer.status()).isEqualTo(200);
    return answer.page();
  }

  @Test
  void aSerialThatTwoMakersUsedIsAskedBackAndTheAnswerGoesOnToTheForm() {
    shop.part(PartKind.CABLE, new PartIdentity("Nordling", "X9", "TWICE", ""), "4");
    ComponentId meant =
        shop.part(PartKind.CABLE, new PartIdentity("Harrow", "HX", "TWICE", ""), "4");
    Document asked = page("loop=K301-VX1&add=twice");
    assertThat(asked.select(".complaints").text())
        .contains("2 parts are called twice. Which one is it?", "Harrow HX", "Nordling X9");
    String href =
        asked.select(".complaints li:contains(Harrow) a").attr("href")
            + part(number("P-1"))
            + part(number("D-1"));
    Document chosen = shop.technician.get(href).page();
    assertThat(chosen.select(".scan-parts").text()).contains("Harrow HX");
    Document form =
        shop.technician.get(chosen.select("main a[href*=/assembly]").attr("href")).page();
    assertThat(form.select("#path-1").attr("value")).startsWith("TWICE · ").contains("Harrow");
    assertThat(form.select("#judged .complaint")).isEmpty();
    assertThat(meant.number()).isPositive();
  }

  private static ComponentId number(String serial) {
    return shop.app.database().read(sql -> shop.register.labelled(sql, serial)).get(0).id();
  }

  @Test
  void anAdapterCountsWithItsLengthWhereverItWasScanned() {
    ComponentId adapter = shop.part(PartKind.ADAPTER, "A-1", "0.5");
    ComponentId probe = shop.part(PartKind.PROBE, "P-half", "0.5");
    ComponentId cable = shop.part(PartKind.CABLE, "C-2", "4");
    ComponentId driver = shop.part(PartKind.DRIVER, "D-2", "5");
    String with = page(part(cable) + part(driver) + part(adapter) + part(probe)).text();
    assertThat(with).doesNotContain("too short").doesNotContain("too long");
    Document without = page(part(cable) + part(driver) + part(probe));
    assertThat(without.select(".scan-say").text()).contains("0.5 m (1.6 ft) too short");
  }

  @Test
  void ofADriverBoxAChannelThatIsFreeIsJudged() {
    ComponentId box =
        shop.part(
            new ComponentDetails(
                PartKind.DRIVER, new PartIdentity("Nordling", "X9", "BOX", ""), 2, "", null, ""),
            shop.app
                .database()
                .read(sql -> shop.register.component(sql, number("D-1")))
                .orElseThrow()
                .facts());
    shop.set(3);
    assertThat(shop.survey("K301-VX2", "2026-02-01", "P-3", "C-3", "BOX #1").status())
        .isEqualTo(303);
    shop.set(4);
    String free = part(number("P-4")) + part(number("C-4")) + part(box);
    // the box stands at VX2, so that is taken for the loop unless another one is named
    Document page = page("loop=K301-VX1" + free);
    assertThat(page.select(".scan-say").text()).doesNotContain("stands at");
    assertThat(page.select(".scan-word").text()).isNotEqualTo("refused");
    Document again = page(part(number("P-3")) + part(number("C-3")) + part(box));
    assertThat(again.select("h2:contains(Go on) + p").text()).contains("K301-VX2");
  }

  @Test
  void whatLiesOnShelvesIsCountedBySort() {
    ComponentFacts facts =
        shop.app
            .database()
            .read(sql -> shop.register.component(sql, number("D-1")))
            .orElseThrow()
            .facts();
    assertThat(facts.shelf().inWords()).isEqualTo("Store 2, 14");
    ComponentId probe = shop.part(PartKind.PROBE, "P-5", "1");
    ComponentId driver = shop.part(PartKind.DRIVER, "D-5", "5");
    shop.part(PartKind.CABLE, "C-51", "4");
    shop.part(PartKind.CABLE, "C-52", "4");
    Document page = page(part(probe) + part(driver));
    assertThat(page.select(".scan-fetch li")).hasSize(1);
    assertThat(page.select(".scan-fetch").text())
        .contains("Store 2, 14", "extension cable 4.0 m (13.1 ft)")
        .containsPattern("[1-9]\\d* more like it");
  }
}
