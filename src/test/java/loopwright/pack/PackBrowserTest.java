package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import loopwright.people.People;
import loopwright.testing.Browser;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/**
 * From the plan of an outage to its close-out, in the browser: the workbook is downloaded, filled
 * in by a program, brought back, signed and reviewed. Curves are synthetic.
 */
class PackBrowserTest {
  @RegisterExtension static final Browser browser = new Browser();
  @TempDir static Path downloads;

  private static Shop shop;

  @BeforeAll
  static void open() {
    shop = new Shop();
    for (int n = 1; n <= 2; n++) {
      shop.point("V-" + n);
      shop.set(n);
      assertThat(shop.survey("V-" + n, "2026-02-20", "P-" + n, "C-" + n, "D-" + n).status())
          .isEqualTo(303);
    }
    authorise("engineer", "Demo Technician", "sign");
    authorise("administrator", "Demo Engineer", "review");
    browser
        .driver()
        .executeCdpCommand(
            "Browser.setDownloadBehavior",
            Map.of("behavior", "allow", "downloadPath", downloads.toAbsolutePath().toString()));
  }

  @AfterAll
  static void close() {
    if (shop != null) {
      shop.close();
    }
  }

  private static void authorise(String by, String name, String scope) {
    Visitor who = shop.app.as(by);
    String person =
        who.get("/authorisations").page().select("select[name=person] option").stream()
            .filter(option -> option.text().equals(name))
            .findFirst()
            .orElseThrow()
            .val();
    assertThat(
            who.post(
                    "/authorisations",
                    "person",
                    person,
                    "scope",
                    scope,
                    "from",
                    "2026-01-01",
                    "until",
                    "2027-01-01",
                    "basis",
                    "examined on the bench")
                .status())
        .isEqualTo(303);
  }

  private static void signIn(String who) {
    browser.forget();
    browser.signIn(shop.app.address().toString(), who, People.DEMO_PASSWORD);
  }

  private static void go(String path) {
    browser.driver().get(shop.app.address().resolve(path).toString());
  }

  /** In one question, so that no element grows stale between two pages. */
  private static String shown() {
    return String.valueOf(
        browser.driver().executeScript("return document.body ? document.body.innerText : ''"));
  }

  private static String main() {
    return browser.find("main").getText();
  }

  private static void type(String id, String value) {
    WebElement field = browser.find("#" + id);
    field.clear();
    field.sendKeys(value);
  }

  private static void day(String id, String value) {
    browser
        .driver()
        .executeScript("document.getElementById(arguments[0]).value = arguments[1]", id, value);
  }

  /** Clicks what says so and waits for the page behind it. */
  private static void press(String words, String then) {
    browser.driver().findElements(By.cssSelector("main button, main a")).stream()
        .filter(one -> one.getText().equals(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("nothing says " + words + ": " + main()))
        .click();
    browser.until(any -> shown().contains(then));
  }

  private static void look(String name) {
    for (int width : new int[] {Browser.DESK, Browser.PHONE}) {
      browser.width(width);
      browser.screenshot("pack-" + name + "-" + width);
      assertThat(browser.overflowsSideways()).as(name + " at " + width).isFalse();
    }
    browser.width(Browser.DESK);
  }

  private static Path downloaded(String name) {
    Path file = downloads.resolve(name);
    browser.until(any -> Files.exists(file));
    return file;
  }

  @Test
  void fromThePlanToTheCloseOut() throws IOException {
    signIn("planner");
    plan();
    Path handedOut = issue();
    Path filled = downloads.resolve("filled.xlsx");
    Files.write(filled, filled(Files.readAllBytes(handedOut)));
    signIn("technician");
    String record = bringBack(filled);
    signAndReview(record);
    signIn("planner");
    closeOut();
  }

  private static void plan() {
    go("/outages/new");
    type("name", "Spring");
    day("begins", "2026-02-25");
    day("ends", "2026-03-12");
    type("team", "two of the shop");
    browser.find("input[name=train]").click();
    type("reason", "agreed");
    press("Plan it", "Take in");
    assertThat(main()).contains("No as-left calibration is on record");
    browser.find("input[aria-label='V-1']").click();
    browser.find("input[aria-label='V-2']").click();
    type("reason", "not calibrated as fitted");
    look("scope");
    press("Take in", "2 loops in.");
  }

  private static Path issue() {
    go("/outages/O-1/pack");
    type("note", "first");
    press("Issue the pack", "Revision 1 is issued.");
    look("pack");
    press("workbook to fill in", "Work pack");
    Path file = downloaded("O-1-R1.xlsx");
    go("/outages/O-1");
    type("note", "unit is down");
    press("Say that it is under way", "The outage is under way.");
    return file;
  }

  /** As a program of the shop would: cells by loop and line, nothing else touched. */
  private static byte[] filled(byte[] handedOut) {
    return FilledSheet.of(handedOut)
        .done("V-1")
        .set("V-1", Item.DONE_BY, Column.AS_FOUND, "Demo Technician")
        .set("V-2", Item.OUTCOME, Column.AS_LEFT, "not done")
        .set("V-2", Item.REASON, Column.AS_LEFT, "no scaffold")
        .workbook();
  }

  /** Address of the calibration that came of it. */
  private static String bringBack(Path filled) {
    go("/outages/O-1/returns");
    browser.find("#file").sendKeys(filled.toAbsolutePath().toString());
    press("Show what would become of it", "Nothing is written yet.");
    assertThat(main())
        .contains("2 loops would be kept", "Curve, as found: conforms.", "Not done: no scaffold");
    look("returned");
    press("Keep these loops", "2 loops are kept; look them over.");
    look("returns");
    return browser.find("main a[href^='/calibrations/C-']").getAttribute("href");
  }

  private static void signAndReview(String record) {
    browser.driver().get(record + "/sign");
    type("password", People.DEMO_PASSWORD);
    press("Sign", "signed");
    signIn("engineer");
    browser.driver().get(record + "/review");
    type("password", People.DEMO_PASSWORD);
    press("Review and sign", "signed and reviewed");
    look("record");
  }

  private static void closeOut() {
    go("/outages/O-1/close-out");
    assertThat(main()).contains("1 done, 1 not done.", "no scaffold", "Judged now");
    type("note", "handed back");
    press("Close the outage", "Closed.");
    assertThat(main()).contains("Judged at closing").doesNotContain("Close the outage");
    look("close-out");
    byte[] pdf = shop.technician.bytes("/outages/O-1/close-out.pdf");
    assertThat(new String(pdf, 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
        .isEqualTo("%PDF-");
  }
}
