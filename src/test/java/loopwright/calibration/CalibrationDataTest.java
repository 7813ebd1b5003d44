package loopwright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublishers;
import loopwright.loop.LoopWorld;
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loops and calibrations as data. Curves here are synthetic: −0.2 V a mil. */
@Tag("zone")
class CalibrationDataTest {
  private static final String FILE =
      "gap_mil,volts\n10,-2\n20,-4\n30,-6\n40,-8\n50,-10\n60,-12\n70,-14\n80,-16\n90,-18\n";

  private static LoopWorld world;
  private static Visitor viewer;
  private static String curve;
  private static String none;

  @BeforeAll
  static void start() {
    world = new LoopWorld();
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
    assertThat(world.survey(2, "2026-02-01", "08:00", "XC-9").status()).isEqualTo(303);
    curve = keep("11:30", "");
    none = keep("11:00", "cable cut");
    viewer = world.app.as("viewer");
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static String keep(String time, String noCurve) {
    FilledForm form =
        FilledForm.of(world.technician.get("/loops/K301-VX1/curve").page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set("gap", "10", "20", "30", "40", "50", "60", "70", "80", "90")
            .set("up", "-2,00", "-4", "-6", "-8", "-10", "-12", "-14", "-16", "-18")
            .set("on", "2026-02-20")
            .set("time", time)
            .set("reason", "outage");
    if (!noCurve.isEmpty()) {
      form.set("no-curve", "yes").set("no-curve-reason", noCurve);
    }
    return form.send(world.technician, "do", "keep").location().replace("/calibrations/", "");
  }

  private static JsonNode json(Visitor.Answer answer) {
    assertThat(answer.header("Content-Type")).startsWith("application/json");
    try {
      return new ObjectMapper().readTree(answer.body());
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static JsonNode get(String path) {
    Visitor.Answer answer = viewer.get(path);
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    return json(answer);
  }

  private static Visitor.Answer analyse(String query, String body, String token) {
    return viewer.send(
        viewer
            .request("/api/analyse" + query, "X-Csrf-Token", token)
            .header("Content-Type", "text/csv")
            .POST(BodyPublishers.ofString(body)));
  }

  private static String token() {
    JsonNode session = get("/api/session");
    assertThat(session.path("role").asText()).isEqualTo("viewer");
    assertThat(session.path("tokenHeader").asText()).isEqualTo("X-Csrf-Token");
    return session.path("token").asText();
  }

  @Test
  void aLoopIsJudgedAsByCheck() {
    JsonNode loop = get("/api/loops/K301-VX2");
    assertThat(loop.path("tag").asText()).isEqualTo("K301-VX2");
    assertThat(loop.path("verdict").asText()).isEqualTo("refused");
    assertThat(loop.path("lengthBalanceMetres").decimalValue()).isEqualByComparingTo("0.5");
    assertThat(loop.path("findings").get(0).path("rule").asText()).isNotEmpty();
    assertThat(loop.path("findings").get(0).path("verdict").asText()).isEqualTo("refused");
    assertThat(loop.path("parts").findValuesAsText("label"))
        .containsExactly("PR-2", "XC-9", "DR-2");
    assertThat(loop.path("parts").findValuesAsText("slot"))
        .containsExactly("probe", "path-1", "driver");
    JsonNode bare = get("/api/loops/K301-VX3");
    assertThat(bare.path("verdict").asText()).isEqualTo("unknown");
    assertThat(bare.path("lengthBalanceMetres").isNull()).isTrue();
  }

  @Test
  void calibrationsOfALoopAreNewestFirst() {
    JsonNode all = get("/api/loops/K301-VX1/calibrations");
    assertThat(all.path("loop").asText()).isEqualTo("K301-VX1");
    assertThat(all.path("calibrations").findValuesAsText("number")).containsExactly(curve, none);
    assertThat(all.path("calibrations").get(1).path("noCurveReason").asText())
        .isEqualTo("cable cut");
    assertThat(all.path("calibrations").get(1).path("readings")).hasSize(9);
    assertThat(get("/api/loops/K301-VX3/calibrations").path("calibrations")).isEmpty();
  }

  @Test
  void oneCalibrationHoldsWhatWasTypedAndItsAnalysis() {
    JsonNode one = get("/api/calibrations/" + curve);
    assertThat(one.path("measuredAt").asText()).isEqualTo("2026-02-20T10:30:00Z");
    assertThat(one.path("verdict").asText()).isEqualTo("conforms");
    assertThat(one.path("readings").get(0).path("output").asText()).isEqualTo("-2,00");
    assertThat(one.path("readings").get(0).path("gapUnit").asText()).isEqualTo("mil");
    assertThat(one.path("parts").findValuesAsText("label")).containsExactly("PR-1", "XC-1", "DR-1");
    assertThat(one.path("analysis").path("profile").asText()).isEqualTo("api670-2mm");
    assertThat(one.path("analysis").path("points")).hasSize(9);
    assertThat(get("/api/calibrations/" + none).path("analysis").isNull()).isTrue();
  }

  @Test
  void aCurveSentAlongIsJudgedAndNothingIsStored() {
    String token = token();
    Visitor.Answer answer = analyse("?profile=api670-2mm", FILE, token);
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    JsonNode document = json(answer);
    assertThat(document).isEqualTo(get("/api/calibrations/" + curve).path("analysis"));
    assertThat(document.path("verdict").asText()).isEqualTo("conforms");
    assertThat(document.path("points").get(0).path("isf").isNull()).isTrue();
    JsonNode magnitudes = json(analyse("?profile=api670-2mm", FILE.replace("-", ""), token));
    assertThat(magnitudes.path("findings").get(0).asText()).contains("magnitudes");
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      ?profile=none       | gap_mil,volts;10,-2 | K-109 | api670-2mm
      ''                  | gap_mil,volts;10,-2 | K-109 | api670-2mm
      ?profile=api670-2mm | gap_mil,volts;10,-2;90,-18 | K-105 | at least 3 readings
      ?profile=api670-2mm | gap_mil,volts;10,-2;20,x;30,-6;40,-8 | K-105 | body, row 3, column volts
      ?profile=api670-2mm | gap_mil;10 | C-116 | volts or millivolts
      ?profile=api670-2mm | '' | S-105 | empty
      """)
  void whatCannotBeJudgedIsToldWithACode(String query, String body, String code, String told) {
    Visitor.Answer answer = analyse(query, body.replace(';', '\n'), token());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(json(answer).path("code").asText()).isEqualTo(code);
    assertThat(json(answer).path("message").asText()).contains(told);
  }

  @Test
  void strangersAndWrongAddressesGetData() {
    assertThat(json(viewer.get("/api/loops/NONE")).path("code").asText()).isEqualTo("W-107");
    assertThat(viewer.get("/api/calibrations/C-999").status()).isEqualTo(404);
    assertThat(viewer.get("/api/loops/NONE/calibrations").status()).isEqualTo(404);
    Visitor.Answer forged = analyse("?profile=api670-2mm", FILE, "forged");
    assertThat(forged.status()).isEqualTo(403);
    assertThat(json(forged).path("code").asText()).isEqualTo("W-103");
    Visitor stranger = world.app.as("viewer");
    stranger.loseSession();
    for (String path : new String[] {"/api/loops/K301-VX1", "/api/session"}) {
      assertThat(stranger.get(path).status()).isEqualTo(401);
      assertThat(json(stranger.get(path)).path("code").asText()).isEqualTo("W-105");
    }
  }
}
