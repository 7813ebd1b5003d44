package loopwright.gapround;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.Map;
import loopwright.loop.LoopWorld;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rounds of a plant with three points; the clock stands at 2026-03-01. */
@Tag("zone")
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class RoundPagesTest {
  private static final String HEAD = "tag;volts;time;machine_state\n";

  private static LoopWorld world;
  private static Visitor planner;

  @BeforeAll
  static void start() {
    world = new LoopWorld();
    planner = world.app.as("planner");
    assertThat(world.survey(1, "2026-01-15", "08:00", "XC-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Visitor.Answer bring(Visitor who, String name, String text) {
    return bring(who, name, text.getBytes(UTF_8));
  }

  private static Visitor.Answer bring(Visitor who, String name, byte[] content) {
    who.get("/gap-rounds");
    return FilledForm.to("/gap-rounds", who.token())
        .set("measured-at", "rack")
        .choose("file", name, content)
        .send(who, "do", "bring");
  }

  private static Document brought(String name, String text) {
    Visitor.Answer answer = bring(planner, name, text);
    assertThat(answer.status()).as(answer.page().text()).isEqualTo(303);
    return planner.get(answer.location()).page();
  }

  @ParameterizedTest
  @Order(1)
  @CsvSource(
      delimiter = '|',
      value = {
        "K301-VX1;-10;2026-02-01 08:00; | the machine state is missing",
        "K301-VX1;-10;2026-02-01 08:00;asleep | machine_state",
        "K301-VX1;10;2026-02-01 08:00;rest | is positive",
        "K301-VX1;-40;2026-02-01 08:00;rest | more than any supply",
        "K301-VX1;ten;2026-02-01 08:00;rest | is not a number",
        "K301-VX1;-10;yesterday;rest | is no moment",
        "K301-VX1;-10;2027-02-01 08:00;rest | in the future",
        "K301-VX1;;2026-02-01 08:00;rest | row 2, column volts",
        "NOBODY;-10;2026-02-01 08:00;rest | Not one tag"
      })
  void whatCantBeMeantIsToldWithItsRowAndNothingIsKept(String row, String complaint) {
    Visitor.Answer answer = bring(planner, "bad.csv", HEAD + row + "\n");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("main").text()).contains(complaint);
    assertThat(planner.get("/gap-trend/K301-VX1").page().text())
        .contains("No gap voltage of this point is on record.");
  }

  @Test
  @Order(2)
  void aHeadingNobodyKnowsIsRefused() {
    Visitor.Answer answer =
        bring(planner, "bad.csv", "tag;volts;time;state\nK301-VX1;-10;2026-02-01 08:00;rest\n");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains("state", "machine_state");
    assertThat(bring(world.technician, "a.csv", HEAD).status()).isEqualTo(403);
  }

  @Test
  @Order(3)
  void theFirstRoundHasNothingBeforeItAndUnmatchedTagsAreReported() {
    Document page =
        brought(
            "january.csv",
            HEAD
                + "K301-VX1;-10,00;2026-01-20 08:00;rest\n"
                + "k301-vx2;-9.9;2026-01-20 08:05;rest\n"
                + "K301-VX3;-9.5;2026-01-20T08:06+01:00;running\n"
                + "LOST-1;-9.5;2026-01-20 08:07;rest\n");
    assertThat(page.select("main").text())
        .contains("january.csv: 4 rows, 3 new, 0 kept already, 1 of unknown tags.")
        .contains("LOST-1")
        .contains("0 of 3 loops are worth a visit.")
        .contains("3 have nothing before them that compares.");
  }

  @Test
  @Order(4)
  void likeIsComparedWithLikeAndTheSuspectComesWithACause() {
    Document page =
        brought(
            "february.csv",
            HEAD
                + "K301-VX1;-8.80;2026-02-20 08:00;rest\n"
                + "K301-VX2;-9.95;2026-02-20 08:05;rest\n"
                + "K301-VX3;-8.0;2026-02-20 08:06;rest\n");
    assertThat(page.select("main").text()).contains("1 of 3 loops are worth a visit.");
    assertThat(page.select("tbody tr")).hasSize(1);
    assertThat(page.select("tbody tr").text())
        .contains("K301-VX1")
        .contains("+1.20 V, as if nearer");
    assertThat(planner.get("/gap-rounds").page().text()).contains("january.csv", "february.csv");
  }

  @Test
  @Order(5)
  void theTrendTellsEachAgainstTheOneBefore() {
    Document page = planner.get("/gap-trend/K301-VX1").page();
    assertThat(page.select("tbody tr")).hasSize(2);
    assertThat(page.select("tbody tr").first().text()).contains("-8.80 V", "+1.20 V");
    assertThat(page.select("tbody tr").last().text()).contains("-10,00 V");
    assertThat(page.select("figure svg")).hasSize(1);
    assertThat(planner.get("/gap-trend/nowhere").status()).isEqualTo(404);
    assertThat(planner.get("/gap-rounds/99").status()).isEqualTo(404);
  }

  @Test
  @Order(6)
  void theSameFileAgainKeepsNothingTwice() {
    assertThat(
            brought("again.csv", HEAD + "K301-VX1;-8.80;2026-02-20 08:00;rest\n")
                .select("main")
                .text())
        .contains("again.csv: 1 rows, 0 new, 1 kept already");
  }

  /**
   * Newest at rest is one at the driver's terminals; it neither compares nor hides the one before.
   */
  @Test
  @Order(7)
  void aReadingTakenElsewhereHidesNoneThatCompares() {
    String head = "tag,volts,time,machine_state,measured_at\n";
    brought("driver.csv", head + "K301-VX2,-9.90,2026-02-21 08:00,rest,driver\n");
    Document page = brought("rack.csv", head + "K301-VX2,-9.00,2026-02-22 08:00,rest,rack\n");
    assertThat(page.select("tbody tr").text()).contains("was −9.95 V", "+0.95 V, as if nearer");
  }

  private static byte[] workbook(boolean withFormula) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "test", "1.0")) {
      Worksheet sheet = book.newWorksheet("round");
      String[] headings = {"Tag", "Volts", "Time", "Machine_state", "Note"};
      for (int i = 0; i < headings.length; i++) {
        sheet.value(1, i, headings[i]);
      }
      sheet.value(3, 0, "k301-vx3");
      if (withFormula) {
        sheet.formula(3, 1, "4.5*-2");
      } else {
        sheet.value(3, 1, -9.025);
      }
      sheet.value(3, 2, LocalDateTime.of(2026, 2, 24, 9, 40, 30));
      sheet.style(3, 2).format("yyyy-mm-dd hh:mm:ss").set();
      sheet.value(3, 3, "Rest");
      sheet.value(3, 4, "after trip");
      sheet.value(4, 0, "K301-VX9");
      sheet.value(4, 1, -9);
      sheet.value(4, 2, "2026-02-24 09:41");
      sheet.value(4, 3, "rest");
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
    return out.toByteArray();
  }

  /** Whatever it is called: a dated cell is a moment, a formula is asked back. */
  @Test
  @Order(8)
  void aWorkbookIsTakenLikeAFileOfText() {
    Visitor.Answer formula = bring(planner, "round.xlsx", workbook(true));
    assertThat(formula.status()).isEqualTo(422);
    assertThat(formula.page().select("main").text())
        .contains("round.xlsx, row 4, column volts: a formula stands here");
    Visitor.Answer taken = bring(planner, "round.csv", workbook(false));
    assertThat(taken.status()).as(taken.page().text()).isEqualTo(303);
    assertThat(planner.get(taken.location()).page().select("main").text())
        .contains("round.csv: 2 rows, 1 new, 0 kept already, 1 of unknown tags.")
        .contains("K301-VX9")
        .contains("was −8.00 V", "−1.03 V, as if farther");
    assertThat(planner.get("/gap-trend/K301-VX3").page().select("tbody tr").first().text())
        .contains("2026-02-24 09:40", "-9.025 V");
    assertThat(bring(planner, "broken.xlsx", "PK\u0003\u0004nothing").page().text())
        .contains("this is no workbook that can be read");
  }

  /** Loops of one family are suspected by what that family was found to do. */
  @Test
  @Order(9)
  void theFirstGuessFollowsTheLawThatTheFamilyHasLearnt() {
    String before = likely();
    assertThat(before).contains("over length", "take the sensitivity to tell");
    Visitor engineer = world.app.as("engineer");
    engineer.get("/length-law/Q8");
    Visitor.Answer taught =
        engineer.post(
            "/length-law/Q8",
            Shop.flat(
                Map.ofEntries(
                    Map.entry("system-length", "5.0"),
                    Map.entry("true-length", "5.5"),
                    Map.entry("known-by", "READ_ON_PART"),
                    Map.entry("found-on", "2026-02-20"),
                    Map.entry("loop", "K301-VX1"),
                    Map.entry("baseline-gap", "50"),
                    Map.entry("baseline-gap-unit", "mil"),
                    Map.entry("baseline-volts", "-9.0"),
                    Map.entry("baseline-sensitivity", "202"),
                    Map.entry("baseline-sensitivity-unit", "mV/mil"),
                    Map.entry("volts", "-7.5"),
                    Map.entry("sensitivity", "163"),
                    Map.entry("sensitivity-unit", "mV/mil"),
                    Map.entry("words", "marking read on both ends"),
                    Map.entry("confirmed", "yes"))));
    assertThat(taught.status()).as(taught.page().text()).isEqualTo(303);
    assertThat(likely()).contains("over length").isNotEqualTo(before);
  }

  /** Of the round of February, the second that was brought in. */
  private static String likely() {
    return planner.get("/gap-rounds/2").page().select("tbody tr").text();
  }
}
