package loopwright.gapround;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import loopwright.loop.LoopWorld;
import loopwright.testing.Visitor;
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
    who.get("/gap-rounds");
    String line = "---------------------------7e1";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    part(body, line, "name=\"csrf\"", who.token());
    part(body, line, "name=\"measured-at\"", "rack");
    part(body, line, "name=\"file\"; filename=\"" + name + "\"", text);
    body.writeBytes(("--" + line + "--\r\n").getBytes(UTF_8));
    return who.send(
        who.request("/gap-rounds", "Origin", who.origin())
            .header("Content-Type", "multipart/form-data; boundary=" + line)
            .POST(BodyPublishers.ofByteArray(body.toByteArray())));
  }

  private static void part(ByteArrayOutputStream body, String line, String about, String text) {
    body.writeBytes(
        ("--" + line + "\r\nContent-Disposition: form-data; " + about + "\r\n\r\n" + text + "\r\n")
            .getBytes(UTF_8));
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
}
