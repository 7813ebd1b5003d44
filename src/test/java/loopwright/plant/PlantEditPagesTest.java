package loopwright.plant;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.testing.RunningApp;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A plant typed in by hand, from the site to the point, and what can be typed wrong. */
class PlantEditPagesTest {
  private final Plant plant = new Plant(PointWatch.NOBODY);
  private RunningApp app;
  private Visitor engineer;

  @BeforeEach
  void start() {
    app = new RunningApp();
    engineer = app.as("engineer");
  }

  @AfterEach
  void stop() {
    app.close();
  }

  private Visitor.Answer post(String path, Map<String, String> fields) {
    List<String> flat = new ArrayList<>();
    fields.forEach((name, value) -> flat.addAll(List.of(name, value)));
    return engineer.post(path, flat.toArray(String[]::new));
  }

  private String train() {
    String train =
        engineer
            .post(
                "/sites/new",
                "code",
                "MARSH",
                "name",
                "Marsh",
                "zone",
                "europe/berlin",
                "reason",
                "new")
            .location();
    assertThat(train).isEqualTo("/trains/new?site=1");
    String machine =
        engineer.post(train, "code", "K-301", "name", "Blower train", "reason", "new").location();
    assertThat(machine).isEqualTo("/machines/new?train=1");
    assertThat(engineer.get(machine).page().select("input[name=place]").val()).isEqualTo("1");
    return engineer
        .post(machine, "code", "T", "name", "Turbine", "place", "1", "reason", "new")
        .location();
  }

  private static Map<String, String> axial() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("tag", "K301-ZT1");
    fields.put("kind", "axial position");
    fields.put("machine", "1");
    fields.put("place", "thrust collar");
    fields.put("angle", "-45");
    fields.put("gap", "50,0");
    fields.put("gap-unit", "mil");
    fields.put("interval", "48");
    fields.put("tip-temperature", "95");
    fields.put("reason", "drawing 7");
    return fields;
  }

  @Test
  void aPlantIsTypedFromTheSiteToThePoint() {
    String points = train();
    assertThat(points).isEqualTo("/points/new?train=1");
    assertThat(post(points, axial()).location()).isEqualTo("/loops/K301-ZT1");
    Point point = app.database().read(sql -> plant.pointTagged(sql, "k301-zt1")).orElseThrow();
    assertThat(point.details().approvedGap()).hasToString("50,0 mil");
    assertThat(point.details().facing().angleDegrees()).isEqualByComparingTo("-45");
    Document edit = engineer.get("/points/1/edit").page();
    assertThat(edit.select("input[name=gap]").val()).isEqualTo("50,0");
    Map<String, String> fields = axial();
    fields.put("state", "retired");
    fields.put("version", "1");
    assertThat(post("/points/1/edit", fields).status()).isEqualTo(303);
    Visitor.Answer late = post("/points/1/edit", fields);
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.page().select(".complaints").text()).contains("Somebody else changed this");
    Visitor.Answer again = post(points, axial());
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.page().select("#tag-about").text()).contains("stands at K-301 / Turbine");
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource(
      textBlock =
          """
          tag,             '',       Give the tag
          kind,            noise,    is not a kind of point
          machine,         '',       Give the machine
          machine,         9,        Give the machine
          family,          Z9,       There is no family Z9
          angle,           400,      The angle can't be 400
          angle,           left,     is not a number
          ramp,            90,       The ramp angle can't be 90
          gap,             0,        The approved gap can't be 0 mil
          gap,             50 mil,   is not a number
          interval,        1.5,      a whole number
          interval,        600,      from 1 to 240
          events,          0,        from 1 to 10000
          threshold,       low,      is not a number
          tip-temperature, 5000,     can't be 5000
          state,           asleep,   is not a state
          reason,          '',       Give the reason
          """)
  void whatCantBeIsSaidAtItsField(String field, String typed, String said) {
    String points = train();
    Map<String, String> fields = axial();
    fields.put(field, typed);
    Visitor.Answer answer = post(points, fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#" + field + "-about .complaint").text()).contains(said);
    assertThat(answer.page().select("input[name=place]").val()).isEqualTo("thrust collar");
    List<Point> none = app.database().read(sql -> plant.pointsAfter(sql, new PointId(0), 9));
    assertThat(none).isEmpty();
  }

  @Test
  void aWrongClockOrATakenCodeIsSaid() {
    Visitor.Answer wrong =
        engineer.post("/sites/new", "code", "A", "name", "A", "zone", "CEST", "reason", "new");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.page().select("#zone-about").text()).contains("Europe/Berlin");
    train();
    Visitor.Answer taken =
        engineer.post("/sites/new", "code", "marsh", "name", "A", "zone", "UTC", "reason", "new");
    assertThat(taken.page().select("#code-about").text()).contains("Site marsh exists already");
    Visitor.Answer machine =
        engineer.post(
            "/machines/new?train=1", "code", "t", "name", "x", "place", "two", "reason", "new");
    assertThat(machine.page().select("#place-about").text()).contains("is not a number");
  }

  @Test
  void onlyEngineersBuildThePlant() {
    Visitor technician = app.as("technician");
    for (String path : List.of("/sites/new", "/trains/new?site=1", "/points/1/edit")) {
      assertThat(technician.get(path).status()).as(path).isEqualTo(403);
    }
    assertThat(engineer.get("/trains/new?site=1").status()).isEqualTo(404);
    assertThat(engineer.get("/points/new?train=x").status()).isEqualTo(404);
    assertThat(engineer.get("/points/7/edit").status()).isEqualTo(404);
  }
}
