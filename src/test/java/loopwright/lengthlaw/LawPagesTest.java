package loopwright.lengthlaw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.loop.LoopWorld;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A confirmed length teaches the family, and stops teaching when it is withdrawn. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class LawPagesTest {
  private static final String PATH = "/length-law/Q8";
  private static final String UNPROVED = "n = 1.00 ± 0.35, c = 0.30 ± 0.20 per mm";

  private static LoopWorld world;
  private static Visitor engineer;

  @BeforeAll
  static void start() {
    world = new LoopWorld();
    engineer = world.app.as("engineer");
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Map<String, String> confirmed() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("system-length", "5.0");
    fields.put("true-length", "5,5");
    fields.put("known-by", "READ_ON_PART");
    fields.put("found-on", "2026-02-20");
    fields.put("loop", "K301-VX1");
    fields.put("baseline-gap", "50");
    fields.put("baseline-gap-unit", "mil");
    fields.put("baseline-volts", "-9.0");
    fields.put("baseline-sensitivity", "202");
    fields.put("baseline-sensitivity-unit", "mV/mil");
    fields.put("volts", "-7.9");
    fields.put("sensitivity", "177");
    fields.put("sensitivity-unit", "mV/mil");
    fields.put("words", "marking read on both ends");
    fields.put("confirmed", "yes");
    return fields;
  }

  private static Document page() {
    return engineer.get(PATH).page();
  }

  /** What the length balance lets one expect of a loop half a metre too long. */
  private static String expected() {
    return world
        .technician
        .get("/loops/K301-VX1")
        .page()
        .select("tr:contains(Length balance)")
        .first()
        .text();
  }

  /** The same, worked out from the exponent that the law's page shows. */
  private static String workedOut(String law) {
    Matcher n = Pattern.compile("n = (\\S+) ± (\\S+),").matcher(law);
    assertThat(n.find()).as(law).isTrue();
    double exponent = Double.parseDouble(n.group(1));
    double spread = Double.parseDouble(n.group(2));
    return "slope of about %s (%s to %s; "
        .formatted(percent(exponent), percent(exponent - spread), percent(exponent + spread));
  }

  private static String percent(double exponent) {
    return "−" + Math.round(100 * (1 - Math.pow(5 / 5.5, exponent))) + " %";
  }

  @Test
  @Order(1)
  void beforeAnyEvidenceTheLawIsThePrior() {
    assertThat(page().select(".facts dd .n").eachText()).containsExactly(UNPROVED, UNPROVED);
    assertThat(engineer.get("/families/Q8").page().select("a[href=/length-law/Q8]").text())
        .isEqualTo(UNPROVED);
    assertThat(engineer.get("/length-law/none").status()).isEqualTo(404);
  }

  @ParameterizedTest
  @Order(2)
  @CsvSource(
      delimiter = '|',
      value = {
        "confirmed | '' | Only a confirmed cause teaches",
        "true-length | 5.0 | Only a wrong length teaches",
        "true-length | 9 | beyond what the law",
        "true-length | x | is not a number",
        "known-by | '' | ",
        "volts | 7.9 | is positive",
        "sensitivity | 0 | not above zero",
        "sensitivity | 7.1 | mixed up",
        "found-on | 2027-01-01 | in the future",
        "words | '' | what was looked at"
      })
  void whatCantBeMeantTeachesNothing(String field, String value, String complaint) {
    Map<String, String> fields = confirmed();
    fields.put(field, value);
    engineer.get(PATH);
    Visitor.Answer answer = engineer.post(PATH, Shop.flat(fields));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#teach .complaint").text())
        .contains(complaint == null ? "" : complaint);
    assertThat(answer.page().select("#baseline-volts").attr("value")).isEqualTo("-9.0");
    assertThat(page().text()).contains("No confirmed length has taught this family yet.");
  }

  @Test
  @Order(3)
  void aConfirmedLengthNarrowsTheLawForEverybody() {
    assertThat(world.technician.post(PATH, Shop.flat(confirmed())).status()).isEqualTo(403);
    assertThat(world.survey(1, "2026-02-10", "08:00", "XC-9").status()).isEqualTo(303);
    assertThat(expected()).contains(workedOut(UNPROVED) + "common practice");
    engineer.get(PATH);
    Visitor.Answer taught = engineer.post(PATH, Shop.flat(confirmed()));
    assertThat(taught.status()).as(taught.page().text()).isEqualTo(303);
    Document page = page();
    assertThat(page.select(".facts dd .n").first().text()).isEqualTo(UNPROVED);
    assertThat(page.select(".facts dd .n").last().text()).isNotEqualTo(UNPROVED);
    String learnt = page.select(".facts dd .n").last().text();
    assertThat(workedOut(learnt)).isNotEqualTo(workedOut(UNPROVED));
    assertThat(expected()).contains(workedOut(learnt) + "learnt from one confirmed length");
    assertThat(page.select("tbody tr").text())
        .contains("K301-VX1", "5.5 m on 5 m, read on part", "without it: " + UNPROVED);
  }

  @Test
  @Order(4)
  void withdrawnItStaysReadableAndNoLongerCounts() {
    String evidence = page().select("#evidence option").attr("value");
    Visitor.Answer wordless = engineer.post(PATH + "/withdraw", "evidence", evidence, "why", " ");
    assertThat(wordless.status()).isEqualTo(422);
    assertThat(
            engineer
                .post(PATH + "/withdraw", "evidence", evidence, "why", "the driver was another")
                .status())
        .isEqualTo(303);
    Document page = page();
    assertThat(page.select(".facts dd .n").last().text()).isEqualTo(UNPROVED);
    assertThat(expected()).contains(workedOut(UNPROVED) + "common practice");
    assertThat(page.select("tbody tr").text()).contains("withdrawn: the driver was another");
    Visitor.Answer again = engineer.post(PATH + "/withdraw", "evidence", evidence, "why", "again");
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.page().select(".complaints").text()).contains("withdrawn already");
  }
}
