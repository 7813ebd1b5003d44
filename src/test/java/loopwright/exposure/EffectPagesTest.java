package loopwright.exposure;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Set points on pages of the invented plant. */
class EffectPagesTest {
  private static Visitor viewer;

  @BeforeAll
  static void open() {
    viewer = new Visitor(DemoSite.toLookAt().address());
    assertThat(viewer.signIn("viewer", People.DEMO_PASSWORD).status()).isEqualTo(303);
  }

  private static Element effect(String path) {
    return viewer.get(path).page().selectFirst("section.effect");
  }

  /** ASF 6.876 of 7.874 mV/µm: 110 µm acts near 110 · 7.874/6.876 = 126 µm. */
  @Test
  void aRecordOutOfToleranceTellsWhereSetPointsActed() {
    String list = viewer.get("/calibrations?verdict=does+not+conform").body();
    String href = list.substring(0, list.indexOf("K201-V2X"));
    href = href.substring(href.lastIndexOf("/calibrations/C-"));
    Element effect = effect(href.substring(0, href.indexOf('"')));
    assertThat(effect.text())
        .contains("What it did to protection")
        .contains("Danger meant for 110 µm pk-pk (4.3 mil) acts at 126 µm (5.0 mil): late by 15 %.")
        .contains("Set points belong to their owner");
    assertThat(effect.select("svg").attr("aria-label")).contains("acts at 126 µm");
  }

  @Test
  void aGoodRecordSaysNothingOfIt() {
    String href =
        viewer
            .get("/calibrations?verdict=conforms")
            .page()
            .selectFirst("td a[href^=/calibrations/]")
            .attr("href");
    assertThat(effect(href)).isNull();
  }

  @Test
  void aLoopTellsWhereItsSetPointsActNow() {
    assertThat(effect("/loops/K101-A1").text())
        .contains("Alert meant for −450 µm (−17.7 mil) acts at −449 µm")
        .contains("as meant");
    assertThat(effect("/loops/K201-V2X").text())
        .contains("stays inside the straight part; beyond, the signal clips.");
  }

  /** 3000 µm of the shaft on a ramp of 30° are 1500 µm of gap: 5.9 V of the −9.9 V at zero. */
  @Test
  void anExpansionOnARampIsWorkedOutWithItsSine() {
    assertThat(effect("/loops/K201-D1").text())
        .contains("On the ramp of 30° the gap changes by 0.500 (its sine)")
        .containsPattern("Alert meant for 3000 µm \\(118.1 mil\\) acts at [23]\\d{3} µm")
        .doesNotContain("is not reached")
        .contains("adds K201-D2 to it")
        .contains("the shaft's lift changes the gap too");
  }
}
