package loopwright.symptom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.loop.LoopWorld;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two numbers on the page, alone and of a loop with an as-left curve (synthetic). */
@Tag("zone")
class CausePagesTest {
  private static final String[] GAPS = {"10", "20", "30", "40", "50", "60", "70", "80", "90"};
  private static final String GOOD = "-2 -4 -6 -8 -10 -12 -14 -16 -18";

  private static LoopWorld world;

  /** Probe of 1.0 m and cable of 4.0 m on record, and a good curve taken with them. */
  @BeforeAll
  static void start() {
    world = new LoopWorld();
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
    Visitor.Answer kept =
        FilledForm.of(world.technician.get("/loops/K301-VX1/curve").page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set("gap", GAPS)
            .set("up", GOOD.split(" "))
            .set("stage", "as left")
            .set("on", "2026-02-21")
            .set("time", "11:30")
            .set("reason", "outage")
            .send(world.technician, "do", "keep");
    assertThat(kept.status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Map<String, String> alone() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("system-length", "5.0");
    fields.put("baseline", "line");
    fields.put("baseline-gap", "50");
    fields.put("baseline-gap-unit", "mil");
    fields.put("baseline-volts", "-9.0");
    fields.put("baseline-sensitivity", "202");
    fields.put("baseline-sensitivity-unit", "mV/mil");
    fields.put("volts", "-9,0");
    fields.put("sensitivity", "170");
    fields.put("sensitivity-unit", "mV/mil");
    fields.put("measured-at", "driver");
    fields.put("together", "yes");
    return fields;
  }

  private static Visitor.Answer ask(Map<String, String> fields) {
    return ask("/cause", fields);
  }

  private static Visitor.Answer ask(String path, Map<String, String> fields) {
    return world.technician.get(
        path
            + "?"
            + fields.entrySet().stream()
                .map(field -> field.getKey() + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&")));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static Document page(Visitor.Answer answer) {
    assertThat(answer.status()).as(answer.page().text()).isEqualTo(200);
    return answer.page();
  }

  @Test
  void anEmptyPageAsksAndTellsNothing() {
    Document page = page(world.technician.get("/cause"));
    assertThat(page.select("#found")).isEmpty();
    assertThat(page.select("#volts").attr("value")).isEmpty();
    assertThat(page.select(".caution")).isNotEmpty();
    assertThat(page.select("nav a[aria-current]").text()).contains("Causes");
  }

  @Test
  void theHiddenMismatchIsTold() {
    Document page = page(ask(alone()));
    assertThat(page.select("#found h2").text())
        .startsWith("Over length, 5.5 m fitted, probe moved afterwards:");
    assertThat(page.select("#found").text())
        .contains("Read the markings")
        .contains("clean and dry the connector")
        .contains("Don't move the probe")
        .contains("wet or dirty connector")
        .contains("1.65 times as likely as a whole metre")
        .contains("n = 1.00 ± 0.35")
        .containsPattern("before measuring .*: healthy \\d+ %, gap moved \\d+ %.*meter error \\d")
        .contains("common practice, no source")
        .contains("after API Std 670, from memory")
        .contains("Measured −9.00 V, 6.693 mV/µm (170.0 mV/mil)");
    assertThat(page.select("#volts").attr("value")).isEqualTo("-9,0");
    assertThat(page.select("#sensitivity-unit option[selected]").attr("value")).isEqualTo("mV/mil");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "volts | 9.0 | is positive",
        "volts | '' | is missing",
        "volts | x | is not a number",
        "volts | -40 | more than a supply",
        "sensitivity | '' | Gap voltage alone",
        "sensitivity | 0 | not above zero",
        "sensitivity | 7.1 | mixed up",
        "baseline-gap | '' | is missing",
        "baseline-gap | 2 | Check the units",
        "system-length | '' | is missing",
        "system-length | 400 | no total length",
        "sensitivity-unit | mV/ft | Choose the unit",
        "baseline-gap-unit | V | Choose the unit",
        "lengths | 5.0,9.0 | beyond the model",
        "gap | -3 | is no gap",
        "u-volts | 0 | not above zero",
        "u-sensitivity | 7 | larger than any",
        "measured-at | moon | no place to measure",
        "together | no | must belong together"
      })
  void whatCantBeMeantIsAskedBackAndNothingTypedIsLost(
      String field, String value, String complaint) {
    Map<String, String> fields = alone();
    fields.put(field, value);
    Visitor.Answer answer = ask(fields);
    assertThat(answer.status()).isEqualTo(422);
    Document page = answer.page();
    assertThat(page.select("#found")).isEmpty();
    assertThat(page.select(".complaint").text()).contains(complaint);
    assertThat(page.select("#baseline-volts").attr("value")).isEqualTo("-9.0");
  }

  @Test
  void aLoopBringsItsCurveAndThePartsThatCouldBeIt() {
    Document loop = page(world.technician.get("/loops/K301-VX1"));
    String link = loop.select("a:contains(Find a cause)").first().attr("href");
    Document opened = page(world.technician.get(link));
    assertThat(opened.text()).contains("5.0 m fitted, driver tuned for 5.0 m").contains("as-left");
    assertThat(opened.select("#system-length").attr("value")).isEqualTo("5");
    assertThat(opened.select("#baseline option[selected]").attr("value")).isEqualTo("curve");

    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("loop", "K301-VX1");
    fields.put("system-length", "5.0");
    fields.put("baseline", "curve");
    fields.put("baseline-gap", "50");
    fields.put("baseline-gap-unit", "mil");
    fields.put("volts", "-8.8");
    fields.put("sensitivity", "173");
    fields.put("sensitivity-unit", "mV/mil");
    fields.put("together", "yes");
    Document found = page(ask(fields));
    assertThat(found.select("#found h2").text()).startsWith("Over length, 5.5 m fitted:");
    assertThat(found.select("#found .facts").text()).contains("−10.00 V");
    assertThat(found.select("#found").text())
        .contains("A cable of 4.5 m instead of the 4.0 m on record")
        .contains("That is what the register holds.");
    assertThat(found.select("#found a[href^=/parts/]").eachText())
        .as("of the length that is meant, no other")
        .containsOnly("XC-9");
  }

  @Test
  void theSameAsData() throws IOException {
    Visitor.Answer answer = ask("/api/cause", alone());
    assertThat(answer.status()).isEqualTo(200);
    JsonNode first = new ObjectMapper().readTree(answer.body()).get("causes").get(0);
    assertThat(first.get("cause").asText()).isEqualTo("over length");
    assertThat(first.get("fittedLengthMetres").asDouble()).isEqualTo(5.5);
    Map<String, String> wrong = alone();
    wrong.put("volts", "9");
    Visitor.Answer refused = ask("/api/cause", wrong);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.body()).contains("is positive");
  }

  @Test
  void aGapOffTheCurveIsAskedBack() {
    Map<String, String> fields = alone();
    fields.put("loop", "K301-VX1");
    fields.put("baseline", "curve");
    fields.put("baseline-gap", "150");
    Visitor.Answer answer = ask(fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains("lies outside");
  }

  @Test
  void aLoopWithoutACurveIsAskedForANumber() {
    Document page = page(world.technician.get("/cause?loop=K301-VX2"));
    assertThat(page.text()).contains("No as-left curve is on record");
    assertThat(page.select("#baseline option").eachAttr("value")).containsExactly("line");
  }

  @Test
  void aLoopThatIsNotThereIsNotFound() {
    assertThat(world.technician.get("/cause?loop=nowhere").status()).isEqualTo(404);
  }

  @Test
  void numbersFromTwoGapsAreAskedBackAtTheField() {
    Map<String, String> fields = alone();
    fields.put("gap", "50");
    fields.put("gap-unit", "mil");
    fields.put("sensitivity-gap", "48.7");
    fields.put("sensitivity-gap-unit", "mil");
    Visitor.Answer answer = ask(fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#sensitivity-gap-about .complaint").text())
        .contains("more than 2 % of the travel");
    assertThat(answer.page().select("#sensitivity-gap").attr("value")).isEqualTo("48.7");
    fields.put("sensitivity-gap", "49.5");
    assertThat(page(ask(fields)).select("#found h2").text()).isNotEmpty();
    fields.put("sensitivity-gap", "x");
    assertThat(ask(fields).page().select("#sensitivity-gap-about .complaint").text())
        .contains("is not a number");
    fields.remove("gap");
    fields.put("sensitivity-gap", "48.7");
    assertThat(page(ask(fields)).select("#found h2").text()).isNotEmpty();
  }

  private static Visitor.Answer setWeights(String field, String weight, String reason) {
    Visitor engineer = world.app.as("engineer");
    return FilledForm.of(engineer.get("/cause/weights").page(), "#weights")
        .set(field, weight)
        .set("reason", reason)
        .send(engineer, "do", "set");
  }

  @ParameterizedTest
  @CsvSource({
    "-1, is no weight",
    "x, is not a number",
    "'', is not a number",
    "1e6, is no weight",
  })
  void whatIsNoWeightStaysTypedAndIsNamed(String weight, String complaint) {
    Visitor.Answer answer = setWeights("weight-connector", weight, "seen often");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#weight-connector-about .complaint").text())
        .contains("Weight of wet or dirty connector", complaint);
    assertThat(answer.page().select("#weight-connector").attr("value")).isEqualTo(weight);
    assertThat(answer.page().select("#weight-healthy").attr("value")).isEqualTo("0.3");
  }

  @Test
  void engineersSetWeightsAndTheResultSaysWhich() throws IOException {
    assertThat(page(ask(alone())).select("#weights-used").text()).contains("built in");
    assertThat(page(world.technician.get("/cause/weights")).select("form[action^=/cause/weights]"))
        .isEmpty();
    assertThat(world.technician.post("/cause/weights", "reason", "mine").status()).isEqualTo(403);
    assertThat(setWeights("weight-connector", "0.5", " ").status()).isEqualTo(422);
    assertThat(setWeights("weight-connector", "0.5", "a wet summer").status()).isEqualTo(303);
    Document set = page(ask(alone()));
    assertThat(set.select("#weights-used").text())
        .containsPattern("weights version \\d+, set 2026-03-01 \\d\\d:\\d\\d UTC by Demo Engineer");
    assertThat(set.select("#found h2").text()).startsWith("Wet or dirty connector");
    JsonNode answer = new ObjectMapper().readTree(ask("/api/cause", alone()).body());
    assertThat(answer.get("weights").asText()).startsWith("weights version ");
    assertThat(answer.at("/causes/0/cause").asText()).isEqualTo("wet or dirty connector");
    assertThat(setWeights("weight-connector", "0.50", "again").page().select(".complaints").text())
        .contains("in use already");
    Visitor engineer = world.app.as("engineer");
    Document opened = engineer.get("/cause/weights").page();
    assertThat(opened.select("tbody").last().text()).contains("a wet summer", "Demo Engineer");
    assertThat(back(engineer, opened).status()).isEqualTo(303);
    assertThat(back(engineer, opened).page().select(".complaints").text())
        .contains("since this page was opened");
    assertThat(page(ask(alone())).select("#found h2").text()).startsWith("Over length");
  }

  private static Visitor.Answer back(Visitor engineer, Document opened) {
    return FilledForm.of(opened, "#built-in")
        .set("back-reason", "it dried")
        .send(engineer, "do", "set");
  }
}
