package loopwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * Headless Chromium for one test class: {@code @RegisterExtension static final Browser browser =
 * new Browser();}. Where Chromium is missing its tests are skipped, and say so on standard output;
 * with LOOPWRIGHT_REQUIRE_EXTERNAL=true they fail instead.
 */
public final class Browser implements BeforeAllCallback, AfterAllCallback {
  public static final int DESK = 1280;
  public static final int PHONE = 390;

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Path SCREENSHOTS = Path.of("target", "screenshots");
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final String[] more;
  private ChromeDriver driver;
  private Path profile;

  /**
   * @param more arguments for Chromium
   */
  public Browser(String... more) {
    this.more = more;
  }

  @Override
  public void beforeAll(ExtensionContext context) throws IOException {
    if (!Files.isExecutable(CHROMIUM) || !Files.isExecutable(DRIVER)) {
      missing(context.getDisplayName());
    }
    profile = Files.createTempDirectory("loopwright-browser");
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(DRIVER.toFile())
            .usingAnyFreePort()
            .build();
    driver = new ChromeDriver(service, options());
    width(DESK);
  }

  private static void missing(String test) {
    String sentence =
        test
            + " was not run: it needs "
            + CHROMIUM
            + " and "
            + DRIVER
            + " (Debian: apt-get install chromium chromium-driver).";
    if ("true".equals(System.getenv("LOOPWRIGHT_REQUIRE_EXTERNAL"))) {
      throw new AssertionError(sentence);
    }
    System.out.println("SKIPPED: " + sentence);
    Assumptions.abort(sentence);
  }

  private ChromeOptions options() {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars",
        "--user-data-dir=" + profile);
    options.addArguments(more);
    options.setAcceptInsecureCerts(true);
    return options;
  }

  @Override
  public void afterAll(ExtensionContext context) throws IOException {
    if (driver != null) {
      driver.quit();
    }
    if (profile != null) {
      delete(profile);
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(java.io.File::delete);
    }
  }

  public ChromeDriver driver() {
    return driver;
  }

  /** Forgets who was signed in. */
  public void forget() {
    driver.manage().deleteAllCookies();
  }

  /**
   * Shows the page as wide as a desk screen or a phone, exactly: a window would not go below 500.
   */
  public void width(int pixels) {
    int height = pixels == PHONE ? 844 : 900;
    driver.manage().window().setSize(new Dimension(Math.max(pixels, 600), height));
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", pixels, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /** Whether the system asks for light on dark. */
  public void dark(boolean dark) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "features",
            java.util.List.of(
                Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
  }

  /** Signs in on the sign-in page and waits for the page after it. */
  public void signIn(String address, String login, String password) {
    driver.get(address + "sign-in");
    find("#login").sendKeys(login);
    find("#password").sendKeys(password);
    find(".door button").click();
    until(there -> !there.getCurrentUrl().contains("/sign-in"));
  }

  public WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  /** Waits for a condition, never for a time. */
  public <T> T until(Function<ChromeDriver, T> condition) {
    return new WebDriverWait(driver, PATIENCE).until(any -> condition.apply(driver));
  }

  /** True when the page can be moved sideways: something on it is wider than the screen. */
  public boolean overflowsSideways() {
    return Boolean.TRUE.equals(
        driver.executeScript(
            "return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
  }

  /** The whole page, also what lies below the window, as target/screenshots/NAME.png. */
  public Path screenshot(String name) {
    try {
      Files.createDirectories(SCREENSHOTS);
      Path file = SCREENSHOTS.resolve(name + ".png");
      Files.write(file, wholePage());
      return file;
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }

  private byte[] wholePage() {
    Map<String, Object> shot =
        driver.executeCdpCommand("Page.captureScreenshot", Map.of("captureBeyondViewport", true));
    return OutputType.BYTES.convertFromBase64Png((String) shot.get("data"));
  }
}
