package loopwright.field;

import static loopwright.db.gen.Tables.ATTACHMENT;
import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.FIELD_ENTRY;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import loopwright.people.People;
import loopwright.testing.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** A technician with a phone: no network, no server, no session, and nothing is lost. */
class FieldBrowserTest {
  @RegisterExtension
  static final Browser browser = new Browser("--host-resolver-rules=MAP plant.test 127.0.0.1");

  @TempDir static Path folder;

  private FieldWorld world;

  @BeforeEach
  void start() {
    world = new FieldWorld();
    browser.forget();
    browser.width(Browser.PHONE);
  }

  @AfterEach
  void stop() {
    network(true);
    world.close();
  }

  private static void network(boolean there) {
    browser
        .driver()
        .executeCdpCommand(
            "Network.emulateNetworkConditions",
            Map.of(
                "offline", !there, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  private void takeAlong() {
    browser.signIn(world.address().toString(), "technician", People.DEMO_PASSWORD);
    browser.driver().get(world.address().resolve(world.page()).toString());
    browser.find("#label").sendKeys("shop tablet");
    browser.find("[data-take-along] .act.go").click();
    browser.until(there -> there.getCurrentUrl().contains("/field/#/p/"));
    until(".field-loops a");
  }

  private static WebElement until(String css) {
    return browser.until(
        there -> there.findElements(By.cssSelector(css)).stream().findFirst().orElse(null));
  }

  /** The page makes itself anew at any time: what is seen is asked in one step. */
  private static String text(String css) {
    return String.valueOf(
        browser
            .driver()
            .executeScript(
                "return [...document.querySelectorAll(arguments[0])].map(one => one.innerText)"
                    + ".join('\\n')",
                css));
  }

  private static void says(String css, String text) {
    browser.until(there -> text(css).contains(text));
  }

  private static void openLoop(String tag) {
    browser
        .driver()
        .executeScript(
            "location.hash = location.hash.replace(/\\/l\\/.*/, '') + '/l/' + arguments[0]", tag);
    until("[data-sheet='" + tag + "']");
  }

  /** As somebody would who types the minus too, though it stands there already. */
  private static void type(String cell, String text) {
    WebElement field = browser.find("[data-cell='" + cell + "']");
    browser
        .driver()
        .executeScript("arguments[0].blur(); arguments[0].value = ''; arguments[0].focus()", field);
    field.sendKeys(text);
  }

  private static void curve() {
    for (int gap = 250; gap <= 2250; gap += 250) {
      double volts = -2.1 - (gap - 250) * 7.874 / 1000;
      type("reading|" + gap + " µm|as found", String.format(Locale.ROOT, "%.3f", volts));
    }
  }

  private static String value(String cell) {
    return browser.find("[data-cell='" + cell + "']").getDomProperty("value");
  }

  private static void tick(String line, String word) {
    browser
        .driver()
        .executeScript(
            "[...document.getElementsByName(arguments[0])].find(one =>"
                + " one.nextSibling.textContent === arguments[1]).click()",
            line + "||as left",
            word);
  }

  private static void intoTheOutbox() {
    tick("nothing touched", "yes");
    tick("outcome", "done");
    browser.driver().executeScript("document.getElementById('finish').click()");
    until("[data-entry]");
  }

  private static String picture() throws IOException {
    Path file = folder.resolve("tip.png");
    ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
    return file.toAbsolutePath().toString();
  }

  private static void reload() {
    browser.driver().navigate().refresh();
    until("#main[data-ready]");
  }

  private static void look(String name) {
    browser.screenshot("field-" + name);
    assertThat(browser.overflowsSideways()).as(name).isFalse();
  }

  @Test
  void aCurveEnteredWithoutNetworkArrivesOnceAfterTheServerWasGoneAndTheSessionOver()
      throws IOException {
    takeAlong();
    look("loops");
    network(false);
    world.packs.shop.app.stop();
    reload();
    says("[data-age]", "as taken along");
    says("#standing", "No network");
    openLoop("V-1");
    curve();
    says("[data-verdict='as found']", "ISF conforms");
    type("reading|1250 µm|as found", "-10.5");
    says("[data-verdict='as found'] .field-verdict", "does not conform");
    look("fails");
    type("reading|1250 µm|as found", "-9.974");
    says("[data-verdict='as found'] .field-verdict", "conforms");
    reload();
    until("[data-sheet='V-1']");
    assertThat(value("reading|1250 µm|as found")).isEqualTo("-9.974");
    assertThat(value("done by||as found")).isEqualTo("Demo Technician");
    assertThat(value("measured at||as found"))
        .as("by the server's clock, which is not the device's")
        .startsWith("2026-03-01 11:1");
    browser.find("#photo").sendKeys(picture());
    until("[data-photo='queued']");
    intoTheOutbox();
    reload();
    assertThat(text("[data-entry]")).contains("in the outbox");
    look("outbox");
    world.packs.shop.app.clock.forward(Duration.ofHours(1));
    world.packs.shop.app.startAgain();
    network(true);
    reload();
    says("[data-receipt]", "Receipt FE-1");
    assertThat(text("[data-entry]")).contains("recorded", "C-");
    until("[data-photo='sent']");
    look("receipt");
    reload();
    says("#standing", "Outbox empty");
    assertThat(world.rows(CALIBRATION)).isEqualTo(1);
    assertThat(world.rows(FIELD_ENTRY)).isEqualTo(1);
    assertThat(world.rows(ATTACHMENT)).isEqualTo(1);
    browser.driver().get(world.address().resolve("/outages").toString());
    assertThat(browser.driver().getCurrentUrl()).as("the session is over").contains("/sign-in");
  }

  @Test
  void anEndedDeviceKeepsItsOutboxAndAConflictIsShownWithBothKept() {
    takeAlong();
    FieldWorld.Phone other = world.phone("other tablet");
    world.packs.shop.app.clock.forward(Duration.ofMinutes(1));
    assertThat(other.send(other.entry("V-2", FieldWorld.done())).state()).isEqualTo("recorded");
    assertThat(world.end("other").status()).isEqualTo(303);
    assertThat(world.end("left behind").status()).isEqualTo(303);
    openLoop("V-2");
    curve();
    type("measured at||as found", "2026-02-28 14:31");
    intoTheOutbox();
    says("[data-trouble]", "left behind");
    assertThat(text("[data-trouble]")).contains("take the pack along again");
    assertThat(text("[data-queued]")).contains("1 in the outbox");
    look("ended");
    browser.driver().get(world.address().resolve(world.page()).toString());
    browser.find("#label").sendKeys("shop tablet again");
    browser.find("[data-take-along] .act.go").click();
    browser.until(there -> there.getCurrentUrl().contains("/field/#/p/"));
    says("#standing", "Outbox empty");
    says(".field-loops a", "conflict");
    browser.driver().executeScript("location.hash += '/l/V-2'");
    says("[data-entry]", "came back as done already");
    assertThat(text("[data-entry]")).contains("Both are kept", "Decide about it");
    look("conflict");
    assertThat(world.rows(CALIBRATION)).isEqualTo(1);
    assertThat(world.look().select(".verdict:contains(waits)")).hasSize(1);
    browser.driver().get(world.address().resolve(world.page()).toString());
    look("take-along");
    browser.width(Browser.DESK);
    look("take-along-desk");
    String plain = world.address().toString().replaceFirst("//[^:/]+", "//plant.test");
    browser.driver().get(plain + "field/");
    says("#main", "plain http");
    assertThat(text("#main")).contains("--keystore");
  }
}
