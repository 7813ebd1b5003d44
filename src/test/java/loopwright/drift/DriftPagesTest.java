package loopwright.drift;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Drift pages of the invented plant: to look at only. */
class DriftPagesTest {
  private static Visitor viewer;

  @BeforeAll
  static void signIn() {
    viewer = new Visitor(DemoSite.toLookAt().address());
    assertThat(viewer.signIn("engineer", People.DEMO_PASSWORD).status()).isEqualTo(303);
    viewer.get("/password");
  }

  @Test
  void aLoopShowsItsFiguresOverTheYearsAndWhyAnIntervalIsSuggested() {
    Document page = viewer.get("/loops/K501-V1X/drift").page();
    assertThat(page.select("svg.plot .plot-panel")).hasSize(3);
    assertThat(page.select("svg.plot text:contains(Average scale factor)")).hasSize(1);
    assertThat(page.select("table.rows td[data-label=Calibration]")).hasSizeGreaterThan(4);
    assertThat(page.select("dd").text()).contains("months");
    assertThat(page.select("td[data-label=Method]").text())
        .contains("staircase", "reliability", "drift");
    assertThat(page.select("a[href*=/points/]")).as("a person changes it").hasSize(1);
    Element link = page.selectFirst("td[data-label=Calibration] a");
    assertThat(viewer.get(link.attr("href")).status()).isEqualTo(200);
  }

  @Test
  void aPartShowsItsCurvesWhereverItStood() {
    Document loop = viewer.get("/loops/K501-V1X").page();
    String part = loop.selectFirst("td[data-label=Part] a").attr("href");
    Document page = viewer.get(part + "/drift").page();
    assertThat(page.select("svg.plot")).hasSize(1);
    assertThat(page.text()).doesNotContain("Suggested");
    assertThat(loop.text()).contains("Drift over the years");
  }

  @Test
  void whatIsDueIsListedAndWhatIsNotThereIsNotFound() {
    assertThat(viewer.get("/due").page().select("h1").text()).contains("Calibrations due");
    assertThat(viewer.get("/due?train=x").status()).isEqualTo(200);
    for (String path :
        new String[] {"/loops/NONE/drift", "/parts/99999999/drift", "/parts/x/drift"}) {
      assertThat(viewer.get(path).status()).as(path).isEqualTo(404);
    }
  }
}
