package loopwright.kit;

import static loopwright.db.gen.Tables.KIT_DISSOLVED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jooq.exception.DataAccessException;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Kits over HTTP: made, seen apart, fitted whole, dissolved. */
class KitPagesTest {
  private static Shop shop;
  private static Visitor technician;

  /** Sets 1 to 9 lie in stock; V-1 to V-3 are empty. Today is 2026-03-01. */
  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    for (int i = 1; i <= 9; i++) {
      shop.set(i);
    }
    for (int i = 1; i <= 3; i++) {
      shop.point("V-" + i);
    }
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static long number(String serial) {
    return shop.app
        .database()
        .read(sql -> shop.register.labelled(sql, serial))
        .get(0)
        .id()
        .number();
  }

  private static String set(String probe, String cable, String driver) {
    return "probe:%s/path-1:%s/driver:%s".formatted(number(probe), number(cable), number(driver));
  }

  private static Visitor.Answer make(String name, String set) {
    return technician.post("/kits", "name", name, "set", set, "note", "in a bag");
  }

  private static String kit(int n) {
    Visitor.Answer answer = make("Kit of set " + n, set("P-" + n, "C-" + n, "D-" + n));
    assertThat(answer.status()).as(answer.page().select(".complaints").text()).isEqualTo(303);
    return answer.location();
  }

  private static String page(String path) {
    return technician.get(path).page().text();
  }

  private static void survey(String tag, String probe, String cable, String driver) {
    assertThat(shop.survey(tag, "2026-02-20", probe, cable, driver).status()).isEqualTo(303);
  }

  @Test
  void aPartOfAKitFittedAloneRaisesAttentionUntilTheKitIsDissolved() {
    String kit = kit(1);
    assertThat(page("/kits")).contains("Kit of set 1", "in stock: Store 2, 14");
    assertThat(page("/parts/" + number("C-1"))).contains("It belongs to kit", "Kit of set 1");
    survey("V-1", "P-2", "C-1", "D-2");
    String alone =
        "Extension cable C-1 belongs to kit Kit of set 1 (" + kit.substring(6) + ") with";
    assertThat(page("/loops/V-1")).contains(alone).contains("probe P-1 and driver D-1");
    assertThat(technician.get("/api/loops/V-1").body()).contains("belongs to kit");
    assertThat(page(kit)).contains("Not in one place", "taken apart: 1 of 3 parts fitted at V-1");
    assertThat(technician.post(kit + "/dissolve", "reason", "").status()).isEqualTo(422);
    assertThat(technician.post(kit + "/dissolve", "reason", "cable needed").location())
        .isEqualTo(kit);
    assertThat(page(kit)).contains("Dissolved: cable needed");
    assertThat(technician.get("/api/loops/V-1").body()).doesNotContain("belongs to kit");
    assertThat(technician.post(kit + "/dissolve", "reason", "again").page().text())
        .contains("was dissolved: cable needed");
    assertThat(page("/kits")).doesNotContain("Kit of set 1");
    assertThat(page("/kits?show=all")).contains("dissolved: cable needed");
    assertThatThrownBy(() -> shop.app.write(tx -> tx.sql().deleteFrom(KIT_DISSOLVED).execute()))
        .isInstanceOf(DataAccessException.class);
  }

  @Test
  void theWholeKitIsFittedByOneChoice() {
    String kit = kit(3);
    Document chosen = technician.get("/kits?loop=V-2").page();
    String fit = chosen.select("tr:contains(Kit of set 3) a[href*=/assemble]").attr("href");
    Visitor.Answer to = technician.get(fit);
    assertThat(to.location()).startsWith("/loops/V-2/assembly?");
    FilledForm assembly = FilledForm.of(technician.get(to.location()).page(), "#chain");
    assertThat(assembly.values("probe")).containsExactly("P-3");
    assertThat(assembly.values("path-1")).containsExactly("C-3");
    assertThat(assembly.values("driver")).containsExactly("D-3");
    survey("V-2", "P-3", "C-3", "D-3");
    assertThat(page(kit)).contains("fitted at V-2").doesNotContain("Not in one place");
    assertThat(page("/loops/V-2")).doesNotContain("belongs to kit");
    Visitor.Answer nowhere = technician.get(kit + "/assemble?loop=V-99");
    assertThat(nowhere.status()).isEqualTo(422);
    assertThat(nowhere.page().text()).contains("There is no loop V-99");
  }

  @Test
  void whatIsMeasuredOfTheSetShowsOnTheKit() {
    String kit = kit(4);
    Document shown = technician.get(kit).page();
    assertThat(shown.text()).contains("None is on record. Calibrate it on the bench");
    String bench = shown.select("a[href^=/bench/curve]").attr("href");
    assertThat(bench)
        .isEqualTo(
            "/bench/curve?set="
                + URLEncoder.encode(set("P-4", "C-4", "D-4"), StandardCharsets.UTF_8));
    Visitor.Answer kept =
        FilledForm.of(technician.get(bench).page(), "#curve")
            .set("no-curve", "yes")
            .set("no-curve-reason", "dead")
            .set("alloy", "4140")
            .set("on", "2026-02-10")
            .set("reason", "bench day")
            .send(technician, "do", "keep");
    assertThat(page(kit)).contains(kept.location().substring(14), "no curve");
    assertThat(page("/kits")).contains(kept.location().substring(14));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      no name            | ''       | P-6 | C-6 | D-6 | the name
      a name too long    | LONG     | P-6 | C-6 | D-6 | 80
      a part fitted      | Kit X    | P-6 | C-8 | D-6 | Extension cable C-8 is fitted, not in stock
      of another kit     | Kit X    | P-6 | C-7 | D-6 | Extension cable C-7 belongs to KIT-
      the name is taken  | kIT OF SET 7 | P-6 | C-6 | D-6 | A kit is called kIT OF SET 7 already
      """)
  void whatCannotBeKeptTogetherIsSaid(
      String name, String typed, String probe, String cable, String driver, String said) {
    if (shop.app.database().read(sql -> new KitStore().named(sql, "Kit of set 7")).isEmpty()) {
      kit(7);
      survey("V-3", "P-8", "C-8", "D-8");
    }
    String called = typed.equals("LONG") ? "K".repeat(81) : typed;
    Visitor.Answer answer = make(called, set(probe, cable, driver));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text()).contains(said);
    assertThat(answer.page().select("input[name=set]").val()).isEqualTo(set(probe, cable, driver));
  }

  @Test
  void whatNamesNoSetIsNoKit() {
    assertThat(make("Kit X", "probe:1").page().text()).contains("That names no whole set");
    assertThat(make("Kit X", "probe:99998/driver:99999").page().text())
        .contains("There is no part 99998");
    assertThat(technician.get("/kits/KIT-999").status()).isEqualTo(404);
    assertThat(technician.get("/kits/nonsense").status()).isEqualTo(404);
  }
}
