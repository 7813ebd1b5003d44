package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.people.People;
import loopwright.testing.MigratedMemory;
import loopwright.testing.TestClock;
import loopwright.testing.Visitor;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A part taken out of a loop goes where the technician says. */
@Tag("zone")
class TakenOutTest {
  private static App app;
  private static Web web;
  private static Visitor technician;

  private String tag;
  private String probe;
  private String cable;
  private String driver;
  private String spare;

  @BeforeAll
  static void open() {
    Place place = MigratedMemory.place("taken");
    app = App.open(place, Installation.Purpose.DEMO, new TestClock("2026-11-25T09:00:00Z"));
    app.fillDemo(() -> {});
    app.people().createDemoAccounts();
    web = app.serve(WebSettings.loopback(0), "Demo plant");
    technician = new Visitor(web.address());
    assertThat(technician.signIn("technician", People.DEMO_PASSWORD).status()).isEqualTo(303);
  }

  @AfterAll
  static void close() {
    web.close();
    app.close();
  }

  /** Of the loop as it is on record, with a cable of that length on the shelf to put in. */
  private void at(String loop, String metres) {
    tag = loop;
    Document form = technician.get("/loops/" + tag + "/assembly").page();
    probe = form.select("#probe").attr("value");
    cable = form.select("#path-1").attr("value");
    driver = form.select("#driver").attr("value");
    spare =
        technician
            .get("/parts?kind=extension%20cable&family=LINNET-5&state=in%20stock&length=" + metres)
            .page()
            .select("td a.n[href^=/parts/]")
            .first()
            .text();
  }

  private Visitor.Answer post(String way, String... more) {
    String version =
        technician.get("/loops/" + tag + way).page().select("input[name=version]").attr("value");
    String[] fields = {
      "version",
      version,
      "probe",
      probe,
      "path-1",
      spare,
      "path-2",
      "",
      "path-3",
      "",
      "driver",
      driver,
      "on",
      "2026-11-25",
      "time",
      "08:30",
      "reason",
      "too long a cable"
    };
    String[] all = Arrays.copyOf(fields, fields.length + more.length);
    System.arraycopy(more, 0, all, fields.length, more.length);
    return technician.post("/loops/" + tag + way, all);
  }

  private String pageOf(String serial) {
    Visitor.Answer found = technician.get("/parts?serial=" + serial);
    String href = found.page().select("td a.n[href^=/parts/]").first().attr("href");
    return technician.get(href).page().select("main").text();
  }

  @Test
  void whoeverAssemblesIsAskedWhereTheOldPartGoes() {
    at("K101-V3X", "4.0");
    Visitor.Answer asked = post("/assembly");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.page().text()).contains("Say where extension cable " + cable + " goes");
    assertThat(asked.page().select("#out-path-1 option").eachText())
        .containsExactly("to stock", "to quarantine", "nobody knows where it is");
    assertThat(technician.get("/loops/" + tag).page().text()).contains(cable);
  }

  @Test
  void itGoesToStockOnTheShelfThatWasSaid() {
    at("K101-V1X", "4.0");
    Visitor.Answer done =
        post("/assembly", "out-path-1", "stock", "store-path-1", "Shop 2", "bin-path-1", "Z-9");
    assertThat(done.status()).as(done.page().text()).isEqualTo(303);
    assertThat(pageOf(cable)).contains("in stock").contains("Shop 2, Z-9");
    assertThat(pageOf(spare)).contains(tag);
  }

  @Test
  void itGoesToQuarantineWithAReason() {
    at("K101-V2X", "4.5");
    Visitor.Answer without = post("/assembly", "out-path-1", "quarantine");
    assertThat(without.status()).isEqualTo(422);
    assertThat(without.page().text()).contains("Say why it may not be used");
    Visitor.Answer done = post("/assembly", "out-path-1", "quarantine", "why-path-1", "jacket cut");
    assertThat(done.status()).isEqualTo(303);
    assertThat(pageOf(cable)).contains("quarantined").contains("jacket cut");
  }

  @Test
  void aSurveyLeavesOpenWhereAPartWentUnlessSomebodySaysSo() {
    at("K101-V2Y", "4.5");
    assertThat(post("/survey").status()).isEqualTo(303);
    assertThat(pageOf(cable)).doesNotContain("quarantined");
  }

  @Test
  void aRefusedAssemblyPutsNothingAway() {
    at("K101-V3X", "4.0");
    spare = "";
    Visitor.Answer refused =
        post("/assembly", "out-path-1", "quarantine", "why-path-1", "jacket cut");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(pageOf(cable)).doesNotContain("quarantined").contains("K101-V3X");
  }

  @Test
  void theAddressMayFillInTheChain() {
    at("K101-V3X", "4.0");
    Document form = technician.get("/loops/" + tag + "/survey?path-1=" + spare).page();
    assertThat(form.select("#path-1").attr("value")).isEqualTo(spare);
    assertThat(form.select("#driver").attr("value")).isEqualTo(driver);
    assertThat(form.select("#taken").text()).contains(cable);
  }

  @Test
  void whileChoosingTheFormShowsWhatIsTakenOut() {
    at("K101-V3X", "4.0");
    Visitor.Answer answer =
        technician.get(
            "/loops/"
                + tag
                + "/assembly/judged?probe=%s&path-1=%s&driver=%s".formatted(probe, spare, driver),
            "HX-Request",
            "true");
    assertThat(answer.page().select("#taken[hx-swap-oob]").text())
        .contains("Taken out")
        .contains(cable);
    assertThat(answer.page().select("#judged")).hasSize(1);
  }
}
