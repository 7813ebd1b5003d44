package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pages that show how it was, as it was known. */
@Tag("zone")
class PastPagesTest {
  private static final String LOOP = "/loops/K301-VX1";

  private static LoopWorld world;

  /** Known at first: XC-1 since 1 February; a day later: XC-3 sat there since 10 February. */
  @BeforeAll
  static void start() {
    world = new LoopWorld();
    assertThat(world.survey(1, "2026-02-01", "08:00", "XC-1").status()).isEqualTo(303);
    world.app.clock.forward(Duration.ofDays(1));
    assertThat(world.survey(1, "2026-02-10", "08:00", "XC-3").status()).isEqualTo(303);
    assertThat(world.survey(2, "2026-02-10", "08:00", "XC-4").status()).isEqualTo(303);
    world.app.clock.forward(Duration.ofDays(1));
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Document page(String query) {
    return page(LOOP, query);
  }

  private static Document page(String loop, String query) {
    Visitor.Answer answer = world.technician.get(loop + query);
    assertThat(answer.status()).isEqualTo(200);
    return answer.page();
  }

  private static String cable(Document page) {
    return page.select("td[data-label=Part] a[href]").get(1).text();
  }

  @Test
  void whatWasFittedAndWhatWasKnownAreAskedApart() {
    assertThat(cable(page(""))).isEqualTo("XC-3");
    assertThat(cable(page("?at=2026-02-05"))).isEqualTo("XC-1");
    assertThat(cable(page("?at=2026-02-15"))).isEqualTo("XC-3");
    assertThat(cable(page("?at=2026-02-15+09:30&known=2026-03-01+11:15"))).isEqualTo("XC-1");
    assertThat(cable(page("?at=2026-02-15&known=2026-03-02+11:15"))).isEqualTo("XC-3");
  }

  @Test
  void theMinuteOfTheRecordIsKnownInIt() {
    assertThat(page("?at=2026-02-15&known=2026-03-01+11:14").select("td[data-label=Part]").text())
        .doesNotContain("XC");
    assertThat(cable(page("?at=2026-02-15&known=2026-03-01T11:15"))).isEqualTo("XC-1");
  }

  @Test
  void thePastSaysSoAndOffersNoForms() {
    Document past = page("?at=2026-02-15&known=2026-03-01+11:15");
    assertThat(past.select(".notice").text())
        .contains("as of 2026-02-15 00:00 at the site")
        .contains("as known on 2026-03-01 11:15 (up to entry")
        .contains("Rules, families, names and monitor settings are those of today");
    assertThat(past.select("a[href$=/survey], a[href$=/assembly], a[href$=/curve]")).isEmpty();
    assertThat(past.select("ol.story > li")).hasSize(1);
    assertThat(page("").select("a[href$=/survey]")).hasSize(1);
    assertThat(page("").select("ol.story > li")).hasSize(2);
  }

  @Test
  void factsOfPartsAreThoseOfThen() {
    world.app.write(
        tx ->
            world.register.correctFacts(
                tx,
                world.id("XC-4"),
                facts ->
                    facts.withLength(
                        loopwright.register.NominalLength.read(
                            "4.5",
                            loopwright.units.Unit.METRE,
                            loopwright.matching.Evidence.MEASURED))));
    String loop = "/loops/K301-VX2";
    assertThat(page(loop, "?at=2026-02-15").text()).contains("4.5 m").contains("+0.5 m");
    Document before = page(loop, "?at=2026-02-15&known=2026-03-02+11:15");
    assertThat(before.select("td[data-label=Nominal]").text())
        .contains("4.0 m")
        .doesNotContain("4.5 m");
  }

  @Test
  void theTrainShowsItsLoopsAsTheyWereKnown() {
    String train = "/plant/trains/1";
    assertThat(row(page(train, "?at=2026-02-05"), "K301-VX1"))
        .contains("XC-1")
        .doesNotContain("XC-3");
    assertThat(row(page(train, "?at=2026-02-15&known=2026-03-01+11:15"), "K301-VX1"))
        .contains("XC-1");
    Document before = page(train, "?at=2026-02-15&known=2026-03-01+11:15");
    assertThat(row(before, "K301-VX2")).contains("unknown").doesNotContain("XC-4");
    assertThat(before.select(".notice").text()).contains("as known on 2026-03-01 11:15");
    assertThat(before.select("td a[href^=/loops/]").attr("href"))
        .endsWith("?at=2026-02-15&known=2026-03-01+11%3A15");
    assertThat(row(page(train, ""), "K301-VX1")).contains("XC-3");
    assertThat(world.technician.get(train + "?at=2025-10-26+02:30").status()).isEqualTo(422);
  }

  private static String row(Document page, String tag) {
    return page.select("tr:contains(" + tag + ")").text();
  }

  @Test
  void thePartShowsWhereItWasAsKnownThen() {
    String cable = "/parts/" + world.id("XC-1").number();
    Document now = page(cable, "");
    assertThat(now.select("main .verdict").first().text()).isEqualTo("in stock");
    assertThat(now.select("td[data-label=Until]").text()).isEqualTo("2026-02-10 08:00");
    Document then = page(cable, "?at=2026-02-05");
    assertThat(then.select("main .verdict").first().text()).isEqualTo("fitted");
    assertThat(then.select("main").text()).contains("at K301-VX1");
    assertThat(then.select("a[href$=/scrap], a[href$=/facts]")).isEmpty();
    Document known = page(cable, "?at=2026-02-15&known=2026-03-01+11:15");
    assertThat(known.select("main .verdict").first().text()).isEqualTo("fitted");
    assertThat(known.select("td[data-label=Until]").text()).isEqualTo("now");
    Document unknown = page(cable, "?known=1");
    assertThat(unknown.select("main .verdict").first().text()).isEqualTo("not known");
    assertThat(unknown.select("main").text()).contains("Nobody had recorded anything of this part");
  }

  @Test
  void whatWasExchangedBetweenTwoMomentsIsToldWithTheChange() {
    for (String page : new String[] {LOOP, "/plant/trains/1", "/plant/sites/1"}) {
      Document told = page(page, "/differences?at=2026-02-05&known=&at2=2026-02-15&known2=");
      String cable = row(told, "Extension cable");
      assertThat(cable)
          .contains("K301-VX1")
          .contains("XC-1 XC-3")
          .contains("2026-02-10 08:00 XC-3 survey by")
          .contains("entered on 2026-03-02 11:15 seen at the junction box");
      assertThat(told.select("td a[href^=/record/]")).isNotEmpty();
    }
    Document train = page("/plant/trains/1", "/differences?at=2026-02-05&at2=2026-02-15");
    assertThat(train.select("h1 small").text()).isEqualTo("K-301");
    assertThat(row(train, "K301-VX2")).contains("nothing on record").contains("XC-4");
  }

  @Test
  void whatWasLearntSinceIsToldForOneMoment() {
    Document told =
        page(LOOP, "/differences?at=2026-02-15&known=2026-03-01+11:15&at2=2026-02-15&known2=");
    assertThat(row(told, "Extension cable"))
        .contains("XC-1 XC-3")
        .contains("record corrected XC-3 survey by");
    assertThat(page(LOOP, "/differences?at=2026-02-05&at2=2026-02-06").select("main").text())
        .contains("Nothing differs");
    Document turned = page(LOOP, "/differences?at=2026-02-15&at2=2026-02-05");
    assertThat(row(turned, "Extension cable")).contains("XC-1 XC-3");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          at=&at2=,                      Both are now
          at=2026-02-01&at2=2026-03-29,  still to come
          at=2025-03-30+02:30&at2=,      were put forward
          at=2026-02-01&at2=2025-10-26+02:30, Which do you mean
          """)
  void whatCannotBeComparedIsAskedBack(String query, String told) {
    Visitor.Answer answer = world.technician.get(LOOP + "/differences?" + query);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains(told);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          at=2026-03-29+12:30,       still to come
          at=2025-03-30+02:30,       were put forward past 02:30
          at=2025-10-26+02:30,       twice
          at=soon,                   is no moment
          at=2026-02-30,             Give the day like
          known=2027-01-01,          still to come
          known=9999,                There is no entry 9999
          known=2025-10-26T02:30,    twice
          """)
  void whatCannotBeMeantIsAskedBack(String query, String told) {
    Visitor.Answer answer = world.technician.get(LOOP + "?" + query);
    assertThat(answer.status()).isEqualTo(422);
    Document page = answer.page();
    assertThat(page.select(".complaints").text()).contains(told).contains("how it stands now");
    assertThat(cable(page)).isEqualTo("XC-3");
    assertThat(page.select("details.times[open]")).hasSize(1);
  }

  @Test
  void anHourThatCameTwiceCanBeToldWithItsOffset() {
    assertThat(page("?at=2025-10-26T02:30%2B01:00").select(".notice").text())
        .contains("as of 2025-10-26 02:30");
  }
}
