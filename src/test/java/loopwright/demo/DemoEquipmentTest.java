package loopwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.Test;

/** The invented shop's equipment is in date, so that a budget can be tried at once. */
class DemoEquipmentTest {

  private static Visitor signedIn(String login) {
    Visitor visitor = new Visitor(DemoSite.toLookAt().address());
    assertThat(visitor.signIn(login, People.DEMO_PASSWORD).status()).isEqualTo(303);
    return visitor;
  }

  @Test
  void aMicrometerAndAVoltmeterWaitForTheFirstCurve() {
    Visitor viewer = signedIn("viewer");
    assertThat(viewer.get("/standards").page().select("tbody tr").eachText())
        .hasSize(2)
        .allMatch(row -> row.contains("in use") && row.contains("Due in"));
    assertThat(viewer.get("/").page().select("tbody").text()).doesNotContain("MIC-1", "DVM-1");
    Visitor technician = signedIn("technician");
    assertThat(
            technician
                .get("/loops/K101-V3X/curve")
                .page()
                .select("input[name=standard]")
                .eachAttr("value"))
        .containsExactly("DVM-1", "MIC-1");
  }
}
