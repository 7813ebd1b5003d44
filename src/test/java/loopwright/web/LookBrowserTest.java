package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import loopwright.testing.Browser;
import loopwright.testing.KnownPeople;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a person sees, at a desk and on a phone, light and dark. */
class LookBrowserTest {
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
  void signedOut() {
    browser.driver().get(site.web.address() + "sign-in");
    browser.forget();
  }

  @ParameterizedTest(name = "{0} px wide, dark: {1}")
  @CsvSource({"1280, false", "1280, true", "390, false", "390, true"})
  void pagesFitAndCanBeReadByEverybody(int width, boolean dark) {
    browser.width(width);
    browser.dark(dark);
    look("sign-in", "sign-in", width, dark);
    browser.signIn(site.web.address().toString(), "planner", KnownPeople.PASSWORD);
    look("", "components", width, dark);
    look("nowhere", "not-found", width, dark);
    look("password", "password", width, dark);
  }

  private static void look(String path, String name, int width, boolean dark) {
    browser.driver().get(site.web.address() + path);
    browser.until(there -> there.executeScript("return document.fonts.status").equals("loaded"));
    browser.screenshot(name + "-" + width + (dark ? "-dark" : "-light"));
    assertThat(browser.overflowsSideways()).as(name + " is wider than the screen").isFalse();
    if ((width == Browser.DESK) != dark) {
      assertEverybodyCanRead(name);
    }
  }

  /** Twice is enough here: the colours of both modes are worked out in ContrastTest. */
  private static void assertEverybodyCanRead(String name) {
    Results found = new AxeBuilder().analyze(browser.driver());
    assertThat(found.getPasses()).as("rules that could be checked").hasSizeGreaterThan(10);
    assertThat(found.getViolations().stream().map(LookBrowserTest::say)).as(name).isEmpty();
  }

  private static String say(Rule rule) {
    return rule.getId() + ": " + rule.getHelp() + " at " + rule.getNodes().get(0).getHtml();
  }
}
