package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.testing.Browser;
import loopwright.testing.KnownPeople;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** What the small script and the policy against scripts do in a real browser. */
class TypingBrowserTest {
  @RegisterExtension static final Browser browser = new Browser();

  private static SampleSite site;

  @BeforeAll
  static void start() {
    site = new SampleSite();
  }

  @AfterAll
  static void stop() {
    if (site != null) {
      site.close();
    }
  }

  @BeforeEach
  void signedIn() {
    browser.driver().get(site.web.address() + "sign-in");
    browser.forget();
    browser.signIn(site.web.address().toString(), "planner", KnownPeople.PASSWORD);
  }

  @Test
  void aSlashGoesToTheSearchBoxButNotWhileTyping() {
    browser.find("body").sendKeys("/");
    assertThat(focused()).isEqualTo("find");
    browser.find("#maker").sendKeys("a/b");
    assertThat(browser.find("#maker").getDomProperty("value")).isEqualTo("a/b");
  }

  @Test
  void aComplaintKeepsEveryWordAndSaysWhere() {
    browser.width(Browser.PHONE);
    browser.find("#serial").clear();
    browser.find("#serial").sendKeys("00042");
    browser.find("#length").sendKeys("four");
    browser.find("#remark").sendKeys("long remark");
    browser.find("form.grid .go").click();
    browser.until(there -> !there.findElements(By.className("complaints")).isEmpty());
    browser.screenshot("complaint-390");
    browser.width(Browser.DESK);
    browser.screenshot("complaint-1280");
    assertThat(browser.find("#serial").getDomProperty("value")).isEqualTo("00042");
    assertThat(browser.find("#length").getDomProperty("value")).isEqualTo("four");
    assertThat(browser.find("#remark").getDomProperty("value")).isEqualTo("long remark");
    assertThat(browser.find("#length-about").getText()).contains("not a length");
  }

  /** A driver closes the browser's own question before we could see it, so we ask the page. */
  @Test
  void leavingWithSomethingTypedAsksFirst() {
    assertThat(asksBeforeLeaving()).isFalse();
    browser.find("#find").sendKeys("only a search");
    assertThat(asksBeforeLeaving()).isFalse();
    browser.find("#maker").sendKeys("typed");
    assertThat(asksBeforeLeaving()).isTrue();
    browser.find("form.grid .go").click();
    browser.until(there -> !there.findElements(By.className("complaints")).isEmpty());
    assertThat(asksBeforeLeaving()).as("after a complaint, still not stored").isTrue();
  }

  private static boolean asksBeforeLeaving() {
    return Boolean.TRUE.equals(
        browser
            .driver()
            .executeScript(
                "const leave = new Event('beforeunload', {cancelable: true});"
                    + "window.dispatchEvent(leave); return leave.defaultPrevented"));
  }

  @Test
  void aSessionThatRanOutDoesNotEatTheForm() {
    browser.find("#length").sendKeys("4,5");
    browser.find("#remark").sendKeys("typed for an hour");
    browser.forget();
    browser.find("form.grid .go").click();
    browser.until(there -> !there.findElements(By.id("login")).isEmpty());
    browser.screenshot("signed-out-1280");
    browser.find("#login").sendKeys("technician");
    browser.find("#password").sendKeys(KnownPeople.PASSWORD);
    browser.find(".door button").click();
    browser.until(there -> !there.findElements(By.cssSelector("td.typed")).isEmpty());
    browser.screenshot("held-1280");
    assertThat(browser.find("main").getText()).contains("typed for an hour");
    assertThat(site.pages.stored).isEmpty();
    browser.find("main .go").click();
    browser.until(there -> there.findElement(By.id("notice")).getText().equals("Stored 00417."));
    assertThat(site.pages.stored).containsExactly("technician 00417");
  }

  @Test
  void choicesAreWalkedByKeysAndFillTheField() {
    browser.find("#chosen").sendKeys("00");
    browser.until(there -> !there.findElements(By.cssSelector("#chosen-choices button")).isEmpty());
    browser.find("#chosen").sendKeys(Keys.ARROW_DOWN);
    browser.driver().switchTo().activeElement().sendKeys(Keys.ARROW_DOWN);
    assertThat(browser.driver().switchTo().activeElement().getText()).isEqualTo("00418");
    browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
    assertThat(browser.find("#chosen").getDomProperty("value")).isEqualTo("00418");
    assertThat(focused()).isEqualTo("chosen");
  }

  @Test
  void aScriptWrittenIntoThePageDoesNotRun() {
    browser
        .driver()
        .executeScript(
            "const s = document.createElement('script'); s.textContent = 'window.ran = true';"
                + "document.body.append(s)");
    assertThat(browser.driver().executeScript("return window.ran === undefined")).isEqualTo(true);
  }

  @Test
  void theMenuOpensOnAPhoneWithoutScript() {
    browser.width(Browser.PHONE);
    assertThat(browser.find(".top nav.wide").isDisplayed()).isFalse();
    browser.find(".menu summary").click();
    assertThat(browser.find(".menu nav").isDisplayed()).isTrue();
    browser.screenshot("menu-390");
    browser.width(Browser.DESK);
    assertThat(browser.find(".top nav.wide").isDisplayed()).isTrue();
  }

  private static String focused() {
    return browser.driver().switchTo().activeElement().getDomAttribute("id");
  }
}
