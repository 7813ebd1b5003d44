package loopwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import loopwright.demo.DemoFaults;
import loopwright.people.People;
import loopwright.testing.Browser;
import loopwright.testing.DemoSite;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The main flows in the invented plant, as each user would walk them. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class DemoBrowserTest {
  @RegisterExtension static final Browser browser = new Browser();

  private static DemoSite site;

  @BeforeAll
  static void open() {
    assertThat(new TestClock(DemoSite.NOW).instant())
        .isEqualTo(Instant.parse("2026-11-25T09:00:00Z"));
    site = new DemoSite();
  }

  @AfterAll
  static void close() {
    if (site != null) {
      site.close();
    }
  }

  @BeforeEach
  void signIn() {
    browser.forget();
    browser.width(Browser.DESK);
    browser.signIn(site.address().toString(), "technician", People.DEMO_PASSWORD);
  }

  private static void open(String path) {
    browser.driver().get(site.address().resolve(path).toString());
  }

  private static String text(String css) {
    return browser.driver().findElement(By.cssSelector(css)).getText();
  }

  private static void waitForText(String css, String expected) {
    new WebDriverWait(browser.driver(), java.time.Duration.ofSeconds(40))
        .ignoring(StaleElementReferenceException.class)
        .withMessage(() -> css + " never said " + expected)
        .until(
            driver ->
                driver.findElements(By.cssSelector(css)).stream()
                    .anyMatch(e -> e.getText().contains(expected)));
  }

  private static void type(String id, String value) {
    WebElement field = browser.driver().findElement(By.id(id));
    field.clear();
    field.sendKeys(value);
  }

  @Test
  @Order(1)
  void theFirstPageTellsWhatNeedsSomebodyWorstFirst() {
    open("/");
    List<String> verdicts =
        browser.driver().findElements(By.cssSelector("tbody .verdict")).stream()
            .map(WebElement::getText)
            .toList();
    assertThat(verdicts).contains("refused", "unknown", "attention");
    assertThat(verdicts)
        .isSortedAccordingTo(
            java.util.Comparator.comparing(List.of("refused", "unknown", "attention")::indexOf));
    assertThat(text("main")).contains("K101-V3X", "too long").contains("K101-V3Y", "too short");
  }

  /** Everything about the configuration that is hidden in the plant, and nothing else. */
  @Test
  @Order(2)
  void hiddenFaultsAreFoundByTheFirstPageAndPutRightByTheExchangeFinder() {
    open("/");
    List<String> told =
        browser.driver().findElements(By.cssSelector("table.rows tbody tr")).stream()
            .map(
                row ->
                    row.findElement(By.cssSelector(".verdict")).getText()
                        + " "
                        + row.findElement(By.cssSelector("td:nth-child(2) a")).getText())
            .toList();
    List<String> refused =
        Stream.of(
                DemoFaults.CABLES_SWAPPED,
                DemoFaults.PROBES_SWAPPED,
                List.of(DemoFaults.TOO_LONG_AND_REGAPPED, DemoFaults.DRIVER_OF_ANOTHER_LENGTH))
            .flatMap(List::stream)
            .map(tag -> "refused " + tag)
            .toList();
    assertThat(told)
        .filteredOn(row -> row.startsWith("refused"))
        .containsExactlyInAnyOrderElementsOf(refused);
    assertThat(told)
        .filteredOn(row -> row.startsWith("unknown"))
        .containsExactly("unknown " + DemoFaults.UNKNOWN_LENGTH);
    assertThat(told).contains("attention " + DemoFaults.CHANGED_SINCE_CALIBRATION);

    browser.driver().findElement(By.linkText("Exchanges")).click();
    String exchanges = text("main");
    assertThat(exchanges)
        .contains("Swap the extension cables of K101-V3X and K101-V3Y")
        .contains("Or swap the probes, each with its lead, of K201-V5X and K201-V5Y")
        .contains("Look: are the parts swapped, or only the records?");
    String fromStore = exchanges.substring(exchanges.indexOf("From the store"));
    assertThat(fromStore)
        .containsPattern(DemoFaults.TOO_LONG_AND_REGAPPED + ".*extension cable 5.0 m")
        .containsPattern(DemoFaults.DRIVER_OF_ANOTHER_LENGTH + ".*driver 4.572 m");
  }

  @Test
  @Order(3)
  void aLoopOutOfBalanceIsSeenAndAnAssemblyThatDoesNotMatchIsRefused() {
    open("/loops/K101-V3X");
    assertThat(text("h1")).contains("K101-V3X");
    assertThat(text("main svg")).contains("+0.5 m");
    open("/loops/K101-V3X/assembly");
    type("reason", "Trying to leave it as it is");
    browser.driver().findElement(By.cssSelector("form#chain .go")).click();
    waitForText(".complaints", "0.5 m");
    assertThat(browser.driver().findElement(By.id("reason")).getAttribute("value"))
        .isEqualTo("Trying to leave it as it is");
    assertThat(text("#judged")).contains("On the shelf instead");
  }

  @Test
  @Order(4)
  void findingsChangeWhilePartsAreChosenAndASerialNobodyKnowsIsComplainedOf() {
    open("/loops/K101-V3X/assembly");
    waitForText("#judged", "refused");
    String shelf =
        browser.driver().findElements(By.cssSelector("#judged ul li")).stream()
            .filter(line -> line.getText().contains("extension cable"))
            .findFirst()
            .orElseThrow()
            .findElement(By.tagName("a"))
            .getText();
    type("path-1", shelf);
    waitForText("#judged h2 .verdict", "attention");
    type("reason", "4.0 m cable instead of 4.5 m");
    browser.driver().findElement(By.cssSelector("form#chain .go")).click();
    waitForText("#notice", "recorded");
    assertThat(text("main svg")).doesNotContain("+0.5 m");
    open("/loops/K101-V3X/survey");
    type("path-1", "NO-SUCH-SERIAL");
    type("reason", "misread");
    browser.driver().findElement(By.cssSelector("form#chain .go")).click();
    waitForText(".complaint", "No part in the register is called NO-SUCH-SERIAL");
  }

  @Test
  @Order(5)
  void aCurveIsJudgedWhileItIsTypedAndKeptAgainstThePartsFitted() {
    open("/loops/K101-V3X/curve");
    List<WebElement> ups = browser.driver().findElements(By.name("up"));
    String[] volts = {
      "-1,97", "-3,94", "-5,91", "-7,87", "-9,84", "-11,81", "-13,78", "-15,75", "-17,72"
    };
    for (int i = 0; i < volts.length; i++) {
      ups.get(i).sendKeys(volts[i]);
    }
    waitForText("#judged .verdict", "conforms");
    assertThat(browser.driver().findElements(By.cssSelector("#judged svg"))).isNotEmpty();
    type("reason", "As left after the exchange");
    browser.driver().findElement(By.cssSelector("select#stage option[value='as left']")).click();
    browser.driver().findElement(By.cssSelector("button[value='keep']")).click();
    waitForText("#notice", "Kept as C-");
    assertThat(text("main")).contains("-1,97 V");
    open("/loops/K101-V3X");
    waitForText("h1 + p .verdict", "matches");
  }

  /** From "the gap voltage is right and the sensitivity low" to what to do, on one page. */
  @Test
  @Order(6)
  void twoNumbersLeadToACauseAndTheNextStep() {
    open("/loops/K201-V2X");
    browser.driver().findElement(By.linkText("Find a cause")).click();
    waitForText("h1", "Two numbers, one cause");
    browser.driver().findElement(By.cssSelector("select#baseline option[value='line']")).click();
    type("system-length", "5.0");
    type("baseline-gap", "1270");
    type("baseline-volts", "-9.0");
    type("baseline-sensitivity", "7.953");
    type("volts", "-9.0");
    type("sensitivity", "6.693");
    browser.driver().findElement(By.id("together")).click();
    browser.driver().findElement(By.cssSelector("form#symptom .go")).click();
    waitForText("#found h2", "Over length, 5.5 m fitted, probe moved afterwards");
    assertThat(text("#found"))
        .contains("Half a metre of cable too much: 5.5 m on a driver tuned for 5.0 m.")
        .contains("The probe was then moved away from the shaft until the volts looked right")
        .contains("Read the markings")
        .contains("prove the length, clean and dry the connector, then change parts")
        .contains("Don't move the probe");
  }

  @Test
  @Order(7)
  void noPageIsWiderThanAPhone() {
    browser.width(Browser.PHONE);
    for (String path :
        List.of(
            "/",
            "/plant",
            "/plant/trains/1",
            "/loops/K101-V3X",
            "/loops/K101-V3X/assembly",
            "/loops/K101-V3X/survey",
            "/loops/K101-V3X/correction",
            "/plant/sites/1/differences?at=2025-01-01&at2=",
            "/loops/K101-V3X/curve",
            "/calibrations",
            "/standards",
            "/standards/new",
            "/authorisations",
            "/profiles/api670-2mm",
            "/profiles/api670-2mm/change",
            "/loops/K101-V3X/drift",
            "/calibrations/C-2-2/print",
            "/cause",
            "/cause?loop=K101-V3X&system-length=5&baseline=line&baseline-gap=1270&baseline-volts=-9"
                + "&baseline-sensitivity=7.953&volts=-7.9&sensitivity=6.968&together=yes",
            "/what-if/K101-V3X",
            "/impact",
            "/gap-rounds",
            "/gap-trend/K101-V3X",
            "/length-law/LINNET-5",
            "/parts",
            "/labels?loop=K101-V3X",
            "/scan",
            "/stock",
            "/exchanges",
            "/outages",
            "/bypasses",
            "/work-steps",
            "/concessions",
            "/families",
            "/profiles")) {
      open(path);
      assertThat(browser.driver().getTitle()).as(path).doesNotContain("Not found");
      Long beyond =
          (Long)
              browser
                  .driver()
                  .executeScript("return document.documentElement.scrollWidth - window.innerWidth");
      assertThat(beyond).as(path + " is wider than the phone").isLessThanOrEqualTo(0);
    }
  }
}
