package loopwright.family;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Families changed by engineers over HTTP; loops are judged anew in the same change. */
class FamilyEditPagesTest {
  private static final String EDIT = "/families/Q8/edit";

  private static Shop shop;
  private static Visitor engineer;

  @BeforeAll
  static void open() {
    shop = new Shop();
    engineer = shop.app.as("engineer");
    shop.point("V-1");
    shop.set(1);
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  private static Map<String, String> fields(String path) {
    Map<String, String> fields = new LinkedHashMap<>(Shop.fields(engineer.get(path).page()));
    fields.put("reason", "data sheet 3");
    return fields;
  }

  private static Visitor.Answer send(String path, String... changes) {
    Map<String, String> fields = fields(path);
    for (int i = 0; i < changes.length; i += 2) {
      fields.put(changes[i], changes[i + 1]);
    }
    return engineer.post(path, Shop.flat(fields));
  }

  private static String needs() {
    return engineer.get("/").page().select("main").text();
  }

  @Test
  void aFamilyIsChangedItsVersionsShownAndItsLoopsJudgedAnew() {
    assertThat(needs()).doesNotContain("not a length that family Q8 offers");
    assertThat(send(EDIT, "cables", "4.5 m\n3,5 m").status()).isEqualTo(303);
    assertThat(needs()).contains("4.0 m) is not a length that family Q8 offers");
    assertThat(send(EDIT, "cables", "4 m; 4.5 m", "cable-use", "none").status()).isEqualTo(303);
    assertThat(needs()).contains("takes no extension cable");
    assertThat(send(EDIT, "cable-use", "required", "note", "one\r\ntwo").status()).isEqualTo(303);
    assertThat(needs()).doesNotContain("takes no extension cable");
    Document page = engineer.get("/families/Q8").page();
    assertThat(page.select("main").text())
        .contains("required → none")
        .contains("Demo Engineer")
        .contains("data sheet 3");
    String last = Integer.toString(page.select("select[name=to] option").size());
    Document both = engineer.get("/families/Q8/versions?from=1&to=" + last).page();
    assertThat(both.select("main").text()).contains("note").contains("not said → one");
    assertThat(engineer.get("/families/Q8/versions?from=1&to=99").status()).isEqualTo(404);
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource({
    "leads, 0 m, A length of 0 m can't be",
    "leads, -1 m, A length of -1 m can't be",
    "cables, 400 m, A length of 400 m can't be",
    "cables, 4.5, is not a length",
    "cables, four m, is not a length",
    "systems, 5 m; 5.0 m, stands twice",
    "tolerance, 2, The length tolerance can't be 2.0 m",
    "tolerance, much, is not a number",
    "scale, -200, ''",
    "scale, '', is not a number",
    "range-from, 9000, has to rise",
    "output-low, -0.1, The least negative output can't be",
    "tip, 0, A tip diameter can't be 0 mm",
    "profile, my-own, There is no tolerance profile my-own",
    "code, '', ''",
  })
  void whatNoFamilyIsIsRefusedAndStaysTyped(String field, String typed, String complaint) {
    Visitor.Answer answer = send(EDIT, "range-to", "2250", "output-high", "-0.5", field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text()).contains(complaint);
    assertThat(answer.page().select(".complaints, .complaint").text()).isNotBlank();
    if (!field.equals("profile")) {
      assertThat(Shop.fields(answer.page())).containsEntry(field, typed);
    }
  }

  @Test
  void anUnknownAlloyIsAskedBackOnlyWhereGroupsAreKept() {
    assertThat(send(EDIT, "alloy", "41400").status()).isEqualTo(303);
    engineer.get("/alloys");
    engineer.post("/alloys/begin");
    Visitor.Answer unknown = send(EDIT, "alloy", "4141");
    assertThat(unknown.status()).isEqualTo(422);
    assertThat(unknown.page().select(".complaint").text()).contains("Did you mean 4140?");
    assertThat(send(EDIT, "alloy", "41400", "tip", "8").status()).isEqualTo(303);
    assertThat(send(EDIT, "alloy", "4140").status()).isEqualTo(303);
    assertThat(send(EDIT).page().select(".complaints").text()).contains("exactly that already");
  }

  @Test
  void aFormOpenedBeforeSomebodyElsesChangeIsRefusedWithWhatChanged() {
    Map<String, String> old = fields(EDIT);
    assertThat(send(EDIT, "connectors", "threaded").status()).isEqualTo(303);
    old.put("maker", "Sundqvard");
    Visitor.Answer stale = engineer.post(EDIT, Shop.flat(old));
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().select(".complaints").text())
        .contains("by Demo Engineer")
        .contains("connectors=not said → threaded");
    assertThat(Shop.fields(stale.page())).containsEntry("maker", "Sundqvard");
    assertThat(shop.technician.get(EDIT).status()).isEqualTo(403);
    assertThat(engineer.get("/families/Z9/edit").status()).isEqualTo(404);
  }

  /** 15 ft is 4.572 m exactly: 3 ft and 12 ft add up to nothing left over. */
  @Test
  void aFootFamilyIsAddedAndPairedByName() {
    Visitor.Answer added =
        send(
            "/new-family",
            "code",
            "T/8",
            "name",
            "feet",
            "maker",
            "Quernholt",
            "scale",
            "200",
            "leads",
            "3 ft\n6 ft",
            "cables",
            "9 ft; 12 ft",
            "systems",
            "15 ft");
    assertThat(added.status()).isEqualTo(303);
    assertThat(engineer.get(added.location()).page().select("main").text())
        .contains("3 ft + 12 ft")
        .contains("6 ft + 9 ft");
    assertThat(send("/new-family", "code", "t/8", "name", "x", "maker", "x", "scale", "1").status())
        .isEqualTo(422);
    String pair = "/families/T%2F8/pair";
    assertThat(engineer.post(pair, "other", "Q8", "said-by", "").status()).isEqualTo(422);
    assertThat(engineer.post(pair, "other", "T/8", "said-by", "me").page().select("main").text())
        .contains("interchangeable with itself");
    assertThat(engineer.post(pair, "other", "Q8", "said-by", "R. Eliable").status()).isEqualTo(303);
    assertThat(engineer.post(pair, "other", "Q8", "said-by", "me").status()).isEqualTo(422);
    assertThat(engineer.get("/families/Q8").page().select("main").text())
        .contains("not said → said by R. Eliable");
    String out = "/families/Q8/unpair";
    assertThat(engineer.post(out, "other", "T/8", "reason", "").status()).isEqualTo(422);
    assertThat(engineer.post(out, "other", "T/8", "reason", "tried, no").status()).isEqualTo(303);
    assertThat(engineer.post(out, "other", "T/8", "reason", "again").status()).isEqualTo(422);
  }
}
