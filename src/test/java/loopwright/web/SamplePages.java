package loopwright.web;

import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.units.Numbers;

/** A made-up feature whose pages use everything the web tool offers. */
final class SamplePages implements Pages {
  enum SampleProblem implements Problem {
    NOT_SO;

    @Override
    public String code() {
      return "Z-1";
    }

    @Override
    public String sentence() {
      return "{0} can't be so. Make it otherwise.";
    }
  }

  /** Not public, as features' records often are. */
  record Row(String verdict, String tag, String why, String since) {}

  static final Page PAGE =
      new Page(
          "Test Marsh",
          List.of(
              new NavItem("/", "Needs somebody", "first"),
              new NavItem("/plant", "Plant", "plant"),
              new NavItem("/parts", "Parts", "parts"),
              new NavItem("/calibrations", "Calibrations", "calibrations"),
              new NavItem("/families", "Families", "families"),
              new NavItem("/profiles", "Profiles", "profiles"),
              new NavItem("/import", "Import", "import", Permission.PLAN),
              new NavItem("/record", "Record", "record")));

  final List<String> stored = new CopyOnWriteArrayList<>();
  private volatile String version = "7";

  @Override
  public void mount(Routes routes) {
    routes.get("/", Permission.READ, this::show);
    routes.get("/sample/part", Permission.READ, this::showPart);
    routes.post("/sample/choices", Permission.READ, this::showChoices);
    routes.post("/sample", Permission.RECORD, this::record);
    routes.post("/sample/file", Permission.PLAN, this::receive);
    routes.get("/sample/refused", Permission.READ, http -> refuse());
    routes.post("/sample/refused", Permission.READ, http -> refuse());
    routes.get("/sample/missing", Permission.READ, http -> miss());
    routes.get(
        "/sample/bad",
        Permission.READ,
        http -> {
          throw new BadRequestResponse("an inside word");
        });
    routes.get(
        "/sample/no-template", Permission.READ, http -> PAGE.show(http, "sample/none", Map.of()));
    routes.get("/sample/broken", Permission.READ, http -> fail());
    routes.get("/api/sample/refused", Permission.READ, http -> refuse());
    routes.get("/api/sample/broken", Permission.READ, http -> fail());
    routes.post("/api/sample", Permission.RECORD, http -> http.json(Map.of("actor", id(http))));
    routes.get("/admin", Permission.ADMINISTER, http -> http.result("kept"));
  }

  private static String id(Context http) {
    return Actor.of(http).id();
  }

  private static void refuse() {
    throw new Refused(SampleProblem.NOT_SO, "That");
  }

  private static void miss() {
    throw new Refused(WebProblem.MISSING, "loop", "T900");
  }

  private static void fail() {
    throw new IllegalStateException("a secret of the inside");
  }

  private void show(Context http) {
    show(http, 200, Form.of(Map.of("serial", "00417", "length-unit", "m")).at(version));
  }

  private void showPart(Context http) {
    PAGE.part(http, 200, "sample/components", "rows", model(Form.blank()));
  }

  private void showChoices(Context http) {
    Map<String, Object> model = new HashMap<>(model(Form.blank()));
    model.put("serials", List.of("00417", "00418"));
    PAGE.part(http, 200, "sample/components", "choices", model);
  }

  private void record(Context http) {
    Form form = Form.from(http);
    if (form.stale(version)) {
      form.complain("Test Planner changed this after you opened it. Look at it again.");
      show(http, 409, form.at(version));
      return;
    }
    String serial = form.text("serial", 60);
    form.read("length", SamplePages::length);
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    stored.add(id(http) + " " + serial);
    PAGE.go(http, "/", "Stored " + serial + ".");
  }

  private void receive(Context http) {
    Form form = Form.from(http);
    stored.add(form.typed("note") + " " + http.uploadedFiles().get(0).size());
    PAGE.go(http, "/");
  }

  private static BigDecimal length(String typed) {
    return Numbers.read(typed)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "\u201c" + typed + "\u201d is not a length. Give a number such as 4.5."));
  }

  private static void show(Context http, int status, Form form) {
    PAGE.show(http, status, "sample/components", model(form));
  }

  private static Map<String, Object> model(Form form) {
    Map<String, String> families = new LinkedHashMap<>();
    families.put("", "choose");
    families.put("q8", "Q8, 5 m");
    families.put("q8-long", "Q8, 9 m");
    return Map.of("form", form, "families", families, "rows", ROWS, "serials", List.of());
  }

  private static final List<Row> ROWS =
      List.of(
          new Row("refused", "T100-VX1", "0.5 m too much cable for this driver", "8 months"),
          new Row("attention", "T100-VY1", "cable exchanged since the last curve", "12 days"),
          new Row("unknown", "T200-ZT1", "length never read", "since adoption"),
          new Row("matches", "T200-VX2", "nothing to do", "2 years"),
          new Row("not judged", "T300-KP1", "no column for it", ""));
}
