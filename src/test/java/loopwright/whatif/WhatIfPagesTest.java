package loopwright.whatif;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What-if on loops of the invented plant. */
class WhatIfPagesTest {
  private static final String BY_LENGTH =
      "/what-if/K101-A1?by=lengths&total-unit=m&system-unit=m&total=";

  private static Visitor viewer;

  @BeforeAll
  static void open() {
    viewer = new Visitor(DemoSite.toLookAt().address());
    assertThat(viewer.signIn("viewer", People.DEMO_PASSWORD).status()).isEqualTo(303);
  }

  private static Document page(String path) {
    Visitor.Answer answer = viewer.get(path);
    assertThat(answer.status()).as(answer.page().text()).isEqualTo(200);
    return answer.page();
  }

  @Test
  void theLoopLeadsThereAndWhatIsFittedStandsInTheForm() {
    assertThat(page("/loops/K201-V5Y").select("a[href=/what-if/K201-V5Y]")).isNotEmpty();
    Document page = page("/what-if/K201-V5Y");
    assertThat(page.select("#probe").attr("value")).isNotEmpty();
    assertThat(page.select("#answer h2").first().text())
        .isEqualTo("0.5 m (1.6 ft) too long: 9.5 m fitted on a driver tuned for 9 m.");
    assertThat(page.select("#answer").text())
        .contains("Starts from the last good curve")
        .contains("What it would do to protection")
        .contains("late by")
        .contains("with 95 %")
        .contains("needs a new curve");
    assertThat(page.select("#answer svg[aria-label^=At the set gap]")).hasSize(1);
  }

  /** k = 5/5.5 = 0.909: 9.1 % less of −9.9 V or so, and of the slope nearly as much. */
  @Test
  void onlyLengths() {
    Document page = page(BY_LENGTH + "5,5");
    assertThat(page.select("#answer h2").first().text()).contains("5.5 m fitted", "tuned for 5 m");
    assertThat(page.select("#answer tbody tr")).hasSize(4);
    assertThat(page.select("#answer").text())
        .contains("At true zero the monitor shows")
        .contains("would not conform");
    assertThat(page.select("#total").attr("value")).isEqualTo("5,5");
  }

  @Test
  void inBalanceNothingChanges() {
    Document page = page(BY_LENGTH + "5.0");
    assertThat(page.select("#answer h2").first().text()).startsWith("In balance:");
    assertThat(page.select("#answer").text()).contains("would conform").doesNotContain("late by");
  }

  @Test
  void farOffIsBeyondTheModel() {
    assertThat(page(BY_LENGTH + "9").select("#answer").text())
        .contains("beyond the model")
        .doesNotContain("With 95 %");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "by=lengths&total=&total-unit=m | total",
        "by=lengths&total=-4&total-unit=m | above 0",
        "by=lengths&total=400&total-unit=ft | above 0",
        "by=lengths&total=five&total-unit=m | total",
        "by=lengths&total=5&total-unit=km | unit",
        "by=parts&probe=NOBODY&path-1=&driver= | NOBODY",
        "by=parts&probe=&path-1=&driver= | Not known"
      })
  void whatCantBeMeantIsAskedBack(String query, String complaint) {
    Visitor.Answer answer = viewer.get("/what-if/K101-A1?" + query);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#answer")).isEmpty();
    assertThat(answer.page().select(".complaints").text()).containsIgnoringCase(complaint);
  }

  @Test
  void aLoopThatIsNotThereIsNotFound() {
    assertThat(viewer.get("/what-if/nowhere").status()).isEqualTo(404);
  }
}
