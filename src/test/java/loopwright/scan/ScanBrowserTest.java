package loopwright.scan;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import loopwright.people.People;
import loopwright.testing.Browser;
import loopwright.testing.DemoSite;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** A technician with a telephone, or a scanner that types, at the junction box. */
class ScanBrowserTest {
  private static final String PROBE = "0041365";

  @RegisterExtension
  static final Browser browser =
      new Browser(
          "--use-fake-device-for-media-stream",
          "--use-fake-ui-for-media-stream",
          "--use-file-for-fake-video-capture=" + Film.showing(PROBE));

  private static DemoSite site;

  @BeforeAll
  static void open() {
    site = DemoSite.toLookAt();
  }

  /** As a keyboard-wedge scanner does it: into whatever has the focus, Enter at the end. */
  private static void scan(String text, String awaited) {
    browser.driver().switchTo().activeElement().sendKeys(text, Keys.ENTER);
    browser.until(there -> browser.find("main").getText().contains(awaited));
  }

  @Test
  void threeCodesTypedOnATelephoneGiveAVerdictReadableAtArmsLength() {
    browser.width(Browser.PHONE);
    browser.signIn(site.address().toString(), "technician", People.DEMO_PASSWORD);
    browser.driver().get(site.address() + "scan");
    scan("0041393", "1 of 3");
    scan("0041365", "2 of 3");
    scan("0041431", "refused");
    assertThat(browser.find(".scan-say").getText()).contains("0.5 m (1.6 ft) too long");
    assertThat(browser.find(".scan-shelf").getText()).isEqualTo("Halvenmouth store, A-15");
    Number pixels =
        (Number)
            browser
                .driver()
                .executeScript(
                    "return parseFloat(getComputedStyle(document.querySelector('.scan-word')).fontSize)");
    // some 9 mm on a telephone, for an arm of 0.7 m; common practice, no source
    assertThat(pixels.doubleValue()).isGreaterThan(60);
    Number bottom =
        (Number)
            browser
                .driver()
                .executeScript(
                    "return document.querySelector('.scan-answer').getBoundingClientRect().bottom");
    assertThat(bottom.doubleValue()).as("seen without moving the page").isLessThan(844);
    assertThat(browser.overflowsSideways()).isFalse();
    browser.screenshot("scan-refused-390");
    assertEverybodyCanRead();
    scan("0041431", "was scanned before");
    browser.driver().get(site.address() + "labels?loop=K101-V3X");
    assertThat(browser.overflowsSideways()).isFalse();
    browser.screenshot("labels-390");
    assertEverybodyCanRead();
  }

  @Test
  void theCameraReadsALabelAndLooksOnForTheNextOne() {
    browser.forget();
    browser.width(Browser.PHONE);
    browser.signIn(site.address().toString(), "technician", People.DEMO_PASSWORD);
    browser.driver().get(site.address() + "scan");
    browser.find("[data-scan-start]").click();
    browser.until(there -> there.getCurrentUrl().contains("part="));
    assertThat(browser.find(".scan-parts a.n").getText()).isEqualTo(PROBE);
    browser.until(there -> browser.find("main").getText().contains("Show the next label."));
    assertThat(browser.driver().findElements(By.cssSelector(".complaints"))).isEmpty();
    browser.driver().executeScript("sessionStorage.clear()");
  }

  private static void assertEverybodyCanRead() {
    assertThat(new AxeBuilder().analyze(browser.driver()).getViolations())
        .extracting(rule -> rule.getId() + ": " + rule.getNodes().get(0).getHtml())
        .isEmpty();
  }
}
