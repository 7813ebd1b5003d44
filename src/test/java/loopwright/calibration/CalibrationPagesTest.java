package loopwright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.loop.LoopWorld;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Calibrations to read, on every page that shows them. Curves here are synthetic. */
@Tag("zone")
class CalibrationPagesTest {
  private static final String[] GAPS = {"10", "20", "30", "40", "50", "60", "70", "80", "90"};
  private static final String GOOD = "-2 -4 -6 -8 -10 -12 -14 -16 -18";
  private static final String BAD = "-2 -4 -6 -8 -10 -12 -14 -16 -17.88";

  private static LoopWorld world;
  private static String found;
  private static String left;
  private static String none;

  /** As found out of tolerance, as left within it, both in March; before, nothing to be read. */
  @BeforeAll
  static void start() {
    world = new LoopWorld();
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
    none = keep("as found", "2026-02-10", GOOD, "no-curve", "yes", "no-curve-reason", "cable cut");
    found = keep("as found", "2026-02-20", BAD);
    left = keep("as left", "2026-02-21", GOOD);
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static String keep(String stage, String day, String volts, String... more) {
    FilledForm form =
        FilledForm.of(world.technician.get("/loops/K301-VX1/curve").page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set("gap", GAPS)
            .set("up", volts.split(" "))
            .set("stage", stage)
            .set("on", day)
            .set("time", "11:30")
            .set("reason", "outage");
    for (int i = 0; i < more.length; i += 2) {
      form.set(more[i], more[i + 1]);
    }
    Visitor.Answer answer = form.send(world.technician, "do", "keep");
    assertThat(answer.status()).isEqualTo(303);
    return answer.location().replace("/calibrations/", "");
  }

  private static Document page(String path, String... headers) {
    Visitor.Answer answer = world.technician.get(path, headers);
    assertThat(answer.status()).as(path).isEqualTo(200);
    return answer.page();
  }

  private static List<String> numbers(Document page) {
    return page.select("td[data-label=Calibration]").eachText();
  }

  @Test
  void theListIsNewestFirstAndFilters() {
    assertThat(numbers(page("/calibrations"))).containsExactly(left, found, none);
    assertThat(numbers(page("/calibrations?verdict=conforms"))).containsExactly(left);
    assertThat(numbers(page("/calibrations?verdict=does+not+conform"))).containsExactly(found);
    assertThat(numbers(page("/calibrations?verdict=no+curve"))).containsExactly(none);
    assertThat(numbers(page("/calibrations?before=" + found))).containsExactly(none);
    assertThat(numbers(page("/calibrations?verdict=sideways"))).hasSize(3);
    assertThat(world.technician.get("/calibrations?before=C-999").status()).isEqualTo(404);
  }

  @Test
  void aRecordShowsWhatWasTakenOfWhatByWhom() {
    Document page = page("/calibrations/" + found);
    assertThat(page.select(".verdict").first().text()).isEqualTo("does not conform");
    assertThat(page.text())
        .contains("2026-02-20 11:30 Europe/Berlin")
        .contains("-17.88 V")
        .contains("mechanical touch")
        .contains("outage")
        .as("the same is not said twice")
        .doesNotContain("What was said when it was kept");
    assertThat(page.select("a[href^=/parts/]").eachText())
        .anyMatch(text -> text.contains("PR-1"))
        .anyMatch(text -> text.contains("XC-1"))
        .anyMatch(text -> text.contains("DR-1"));
    assertThat(page.select("svg")).hasSize(1);
    assertThat(page("/calibrations/" + none).text())
        .contains("no curve")
        .contains("cable cut")
        .contains("-18 V");
    assertThat(world.technician.get("/calibrations/C-999").status()).isEqualTo(404);
  }

  @Test
  void theLoopShowsItsLatestCurveAndThePartsTheirShare() {
    Document loop = page("/loops/K301-VX1");
    assertThat(loop.text()).contains("Latest curve: as left").contains(found).contains(left);
    assertThat(numbers(page("/parts/" + world.id("PR-1").number()))).contains(left, found);
    assertThat(page("/parts/" + world.id("PR-3").number()).text())
        .contains("No calibration of a combination with this part");
  }

  @Test
  void beforeACorrectionTheCurvesOfThatTimeAreListedWithTheirCombination() {
    String path = "/loops/K301-VX1/correction";
    Map<String, String> fields = Shop.fields(page(path));
    fields.putAll(Map.of("slot", "path-1", "what", "part", "part", "XC-2"));
    fields.putAll(Map.of("from", "2026-02-15", "until", "2026-02-25", "reason", "misread"));
    String preview =
        world.technician.post(path, Shop.flat(fields)).page().select("main form").text();
    assertThat(preview)
        .contains(found + " as found, 2026-02-20 11:30 PR-1 · XC-1 · DR-1")
        .contains(left + " as left")
        .doesNotContain(none + " as found");
    fields.put("part", "XC-1");
    fields.put("from", "2026-01-15");
    fields.put("until", "2026-02-25");
    assertThat(world.technician.post(path, Shop.flat(fields)).page().select("main form").text())
        .contains("What it changes")
        .doesNotContain(left);
  }

  @Test
  void aReaderOfMilReadsMilInWordsAndTables() {
    Visitor reader = world.app.as("viewer");
    reader.post("/preferences", "units", "mil", "then", "/");
    for (String path :
        List.of("/calibrations", "/loops/K301-VX1", "/parts/" + world.id("PR-1").number())) {
      String said = reader.get(path).page().select("td[data-label=Says]").text();
      assertThat(said).as(path).contains("ASF 198.50 mV/mil").contains("DSL 0.30 mil");
      assertThat(said).as(path).doesNotContain("µm");
      assertThat(page(path).select("td[data-label=Says]").text())
          .contains("ASF 7.815 mV/µm")
          .contains("DSL 7.6 µm")
          .contains("worst ISF −6.0 %");
    }
  }

  /** A machine set to another language must not change what is recorded or shown. */
  @Test
  void theMachinesLocaleIsNoMatter() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(page("/calibrations").select("td[data-label=Says]").text())
          .contains("ASF 7.815 mV/µm");
      assertThat(page("/calibrations/" + found).text())
          .contains("7.815 mV/µm")
          .contains("−6.0 % of nominal")
          .contains("V there")
          .doesNotContain("7,815");
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      assertThat(page("/calibrations/" + found).text()).contains("version 1 ·");
    } finally {
      Locale.setDefault(before);
    }
  }
}
