package loopwright.stock;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.matching.PartKind;
import loopwright.testing.FilledForm;
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

/** Minimum stock over the pages; each test goes on where the one before stopped. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StockPagesTest {
  private static final String CABLE = "/stock/minimum?family=Q8&kind=extension%20cable&length=4.5";

  private static Shop shop;
  private static Visitor planner;

  @BeforeAll
  static void start() {
    shop = new Shop();
    planner = shop.app.as("planner");
    shop.part(PartKind.CABLE, "XC-1", "4.5");
    shop.part(PartKind.CABLE, "XC-2", "4.5");
    shop.part(PartKind.CABLE, "XC-3", "4");
    shop.part(PartKind.PROBE, "PR-1", "0.5");
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static Visitor.Answer decide(String least, String reason) {
    return FilledForm.of(planner.get(CABLE).page(), "main form[method=post]")
        .set("least", least)
        .set("reason", reason)
        .send(planner, "do", "decide");
  }

  private static String row(Document page, String kind, String length) {
    return page.select("table.rows tbody tr").stream()
        .map(each -> each.text())
        .filter(text -> text.contains(kind) && text.contains(length))
        .findFirst()
        .orElse("no such row");
  }

  @Test
  @Order(1)
  void eachLengthCountsForItself() {
    Document page = planner.get("/stock").page();
    assertThat(row(page, "extension cable", "4.5 m"))
        .isEqualTo("Q8 extension cable 4.5 m (14.8 ft) 2 not set – 0 0 0 Decide");
    assertThat(row(page, "extension cable", "4.0 m")).contains(" 1 not set");
    assertThat(planner.get("/").page().text()).doesNotContain("Order");
  }

  @ParameterizedTest
  @Order(2)
  @CsvSource({
    "'', long delivery, is no number of parts",
    "-1, long delivery, is no number of parts",
    "2.5, long delivery, is no number of parts",
    "10000, long delivery, is no number of parts",
    "many, long delivery, is no number of parts",
    "3, '', Give the reason"
  })
  void whatCantBeMeantIsToldAndNothingIsLost(String least, String reason, String complaint) {
    Visitor.Answer answer = decide(least, reason);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains(complaint);
    assertThat(answer.page().select("#least").attr("value")).isEqualTo(least);
    assertThat(answer.page().select("#reason").text()).isEqualTo(reason);
    assertThat(planner.get(CABLE).page().text()).contains("Nothing yet.");
  }

  @Test
  @Order(3)
  void whatIsMissingReachesTheFirstPage() {
    assertThat(decide("4", "long delivery").status()).isEqualTo(303);
    Document first = planner.get("/?who=planner").page();
    assertThat(first.text())
        .contains("extension cable 4.5 m")
        .contains("2 in stock, 4 are to be.")
        .contains("Order 2, exactly of this length");
    assertThat(planner.get(first.select("td[data-label=Where] a").attr("href")).status())
        .isEqualTo(200);
    assertThat(planner.get("/?who=shop").page().text()).doesNotContain("4 are to be");
    assertThat(planner.get("/stock?missing=yes").page().select("table.rows tbody tr")).hasSize(1);
  }

  @Test
  @Order(4)
  void aFormOpenedBeforeSomebodyElseDecidedIsNotTaken() {
    Document opened = planner.get(CABLE).page();
    assertThat(decide("3", "two are on order").status()).isEqualTo(303);
    Visitor.Answer late =
        FilledForm.of(opened, "main form[method=post]")
            .set("least", "9")
            .set("reason", "mine")
            .send(planner, "do", "decide");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.page().text()).contains("decided about this sort meanwhile");
    assertThat(late.page().select("#least").attr("value")).isEqualTo("9");
    assertThat(late.page().select("ul.plain li").eachText())
        .hasSize(2)
        .first()
        .asString()
        .contains("two are on order");
  }

  @Test
  @Order(5)
  void aQuarantinedPartIsNoSpareAndNoneAskedForMissesNothing() {
    shop.app.write(
        tx -> {
          shop.register.quarantine(
              tx, shop.register.labelled(tx.sql(), "XC-1").get(0).id(), "connector bent");
          return true;
        });
    assertThat(row(planner.get("/stock").page(), "extension cable", "4.5 m"))
        .isEqualTo("Q8 extension cable 4.5 m (14.8 ft) 1 3 2 0 0 1 Decide");
    assertThat(decide("0", "not kept any more").status()).isEqualTo(303);
    assertThat(planner.get("/").page().text()).doesNotContain("are to be");
    assertThat(row(planner.get("/stock").page(), "extension cable", "4.5 m")).contains(" 1 0 –");
  }

  @ParameterizedTest
  @Order(6)
  @CsvSource({
    "family=Q9&kind=probe&length=1, 404",
    "family=Q8&kind=wheel&length=1, 404",
    "family=Q8&kind=probe&length=x, 404",
    "family=Q8&kind=probe&length=7, 422",
    "family=Q8&kind=adapter&length=1, 422"
  })
  void aSortThatNobodySellsHasNoMinimum(String query, int status) {
    assertThat(planner.get("/stock/minimum?" + query).status()).isEqualTo(status);
  }

  @Test
  @Order(7)
  void aTechnicianLooksAndDoesNotDecide() {
    Document page = shop.technician.get(CABLE).page();
    assertThat(page.select("main form[method=post]")).isEmpty();
    assertThat(shop.technician.post(CABLE, "least", "1", "reason", "x").status()).isEqualTo(403);
  }

  @ParameterizedTest
  @CsvSource({"0, 0, 0", "1, 0, 1", "20, 0, 1", "21, 0, 2", "21, 7, 3", "0, 1, 1", "100, 3, 5"})
  void aYearsUseOrOneForTwentyFittedIsSuggested(int fitted, int used, int parts) {
    assertThat(new Suggestion(fitted, used).parts()).isEqualTo(parts);
  }
}
