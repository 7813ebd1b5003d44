package loopwright.scan;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import loopwright.label.LabelCode;
import loopwright.people.People;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The scan check at the invented plant, without a script. */
class ScanPagesTest {
  /** Fitted at K101-V3X: 1.0 m and 4.5 m on a driver tuned for 5.0 m. */
  private static final String PROBE = "0041365";

  private static final String CABLE = "0041431";
  private static final String DRIVER = "0041393";

  /** 4.0 m, in the store at A-15. */
  private static final String SHORTER = "0043181";

  private static final String SCRAPPED_CABLE = "0041335";
  private static final String QUARANTINED_PROBE = "0043013";

  private static DemoSite site;
  private static Visitor technician;

  @BeforeAll
  static void start() {
    site = DemoSite.toLookAt();
    technician = signedIn("technician");
  }

  private static Visitor signedIn(String login) {
    Visitor visitor = new Visitor(site.address());
    assertThat(visitor.signIn(login, People.DEMO_PASSWORD).status()).isEqualTo(303);
    visitor.get("/password");
    return visitor;
  }

  private static long number(String serial) {
    List<Component> parts =
        site.app().database().read(sql -> new Register((tx, id) -> {}).labelled(sql, serial));
    assertThat(parts).as(serial).hasSize(1);
    return parts.get(0).id().number();
  }

  private static String code(String serial) {
    return LabelCode.ofComponent(number(serial)).text();
  }

  /** Scans one text after the other, as a person does: each time from the page shown last. */
  private static Document scanned(String... texts) {
    Document page = technician.get("/scan").page();
    for (String text : texts) {
      page = add(page, text);
    }
    return page;
  }

  private static Document add(Document page, String text) {
    Element form = page.select("form.scan-form").first();
    assertThat(form.attr("method")).isEqualTo("get");
    String state =
        Stream.concat(
                form.select("input[type=hidden]").stream()
                    .map(input -> input.attr("name") + "=" + encoded(input.attr("value"))),
                Stream.of("add=" + encoded(text)))
            .reduce((a, b) -> a + "&" + b)
            .orElseThrow();
    Visitor.Answer answer = technician.get("/scan?" + state);
    return answer.status() == 303 ? technician.get(answer.location()).page() : answer.page();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, UTF_8);
  }

  private static String word(Document page) {
    return page.select(".scan-word").text();
  }

  private static List<String> serials(Document page) {
    return page.select(".scan-parts a.n").eachText();
  }

  private static String complaint(Document page) {
    return page.select(".complaints").text();
  }

  static Stream<List<String>> orders() {
    return Stream.of(
        List.of(PROBE, CABLE, DRIVER),
        List.of(PROBE, DRIVER, CABLE),
        List.of(CABLE, PROBE, DRIVER),
        List.of(CABLE, DRIVER, PROBE),
        List.of(DRIVER, PROBE, CABLE),
        List.of(DRIVER, CABLE, PROBE));
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.MethodSource("orders")
  void inAnyOrderTheVerdictIsTheSame(List<String> texts) {
    Document page = scanned(texts.toArray(String[]::new));
    assertThat(word(page)).isEqualTo("refused");
    assertThat(page.select(".scan-answer").text())
        .contains("0.5 m (1.6 ft) too long", "Fit a 4.0 m cable");
    assertThat(serials(page)).containsExactly(PROBE, CABLE, DRIVER);
    assertThat(page.select(".scan-parts").text()).contains("for 5.0 m (16.4 ft)");
    assertThat(page.select("svg").text()).contains("+0.5 m");
  }

  @Test
  void itSaysWhatToFetchFromWhichShelfAndWithThatNothingIsRefused() {
    Document page = scanned(PROBE, CABLE, DRIVER);
    Element first = page.select(".scan-fetch li").first();
    assertThat(first.text())
        .contains("Halvenmouth store, A-15", "extension cable 4.0 m (13.1 ft)", SHORTER)
        .contains("instead of " + CABLE);
    assertThat(page.select(".scan-fetch li").eachText())
        .anySatisfy(line -> assertThat(line).contains("probe 0.5 m", "A-01"));
    Document exchanged = scanned(PROBE, SHORTER, DRIVER);
    assertThat(word(exchanged)).isEqualTo("attention");
    assertThat(exchanged.select(".scan-say").text()).contains("They may be fitted together");
    assertThat(exchanged.select(".scan-fetch li")).isEmpty();
  }

  @Test
  void theCodeTheWholeAddressAndTheSerialMeanTheSamePart() {
    Document page =
        scanned(
            code(PROBE).toLowerCase(java.util.Locale.ROOT),
            site.address() + "c/" + code(SHORTER),
            DRIVER);
    assertThat(serials(page)).containsExactly(PROBE, SHORTER, DRIVER);
    assertThat(serials(scanned(site.address() + "parts/" + number(PROBE)))).containsExactly(PROBE);
  }

  @Test
  void whatIsStillMissingIsSaidAndWhatWouldFit() {
    Document page = scanned(PROBE, DRIVER);
    assertThat(word(page)).isEqualTo("2 of 3");
    assertThat(page.select(".scan-answer").text()).contains("Still to scan: extension cable.");
    assertThat(page.select(".scan-fetch").text()).contains("A-15", SHORTER).doesNotContain("4.5 m");
    assertThat(page.select("a[href*=/assembly], a[href*=/survey]")).isEmpty();
    Element none = page.select("a:contains(There is no cable)").first();
    Document without = technician.get(none.attr("href")).page();
    assertThat(word(without)).isEqualTo("refused");
    assertThat(without.select(".scan-say").text()).contains("4.0 m (13.1 ft) too short");
  }

  @Test
  void theSamePartTwiceIsSaidAndNotAdded() {
    for (String again : List.of(PROBE, code(PROBE), site.address() + "c/" + code(PROBE))) {
      Document page = add(scanned(PROBE, CABLE), again);
      assertThat(complaint(page)).contains("Probe " + PROBE + " was scanned before", "not added");
      assertThat(serials(page)).containsExactly(PROBE, CABLE);
    }
  }

  @Test
  void theLabelOfAScrappedPartResolvesAndIsRefusedInWords() {
    Document page = scanned(site.address() + "c/" + code(SCRAPPED_CABLE));
    assertThat(word(page)).isEqualTo("refused");
    assertThat(page.select(".scan-say").text())
        .contains("Extension cable " + SCRAPPED_CABLE + " is scrapped");
    assertThat(page.select(".scan-parts").text()).contains("scrapped: connector pin bent");
  }

  @Test
  void aQuarantinedPartIsRefusedAndAnotherOneIsFetched() {
    Document page = scanned(QUARANTINED_PROBE, SHORTER, DRIVER);
    assertThat(word(page)).isEqualTo("refused");
    assertThat(page.select(".scan-say").text()).contains("quarantined");
    assertThat(page.select(".scan-parts").text()).contains("dropped, tip cracked", "A-06");
    assertThat(page.select(".scan-fetch li").eachText())
        .anySatisfy(line -> assertThat(line).contains("probe 1.0 m", "instead of"));
  }

  @Test
  void aSecondProbeIsNotAddedButCanTakeTheOthersPlace() {
    String other = "0042924";
    Document page = add(scanned(PROBE, CABLE), other);
    assertThat(complaint(page)).contains(other + " is a probe, and probe " + PROBE + " is here");
    assertThat(serials(page)).containsExactly(PROBE, CABLE);
    Document taken = technician.get(page.select(".complaints a").attr("href")).page();
    assertThat(serials(taken)).containsExactly(other, CABLE);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          NO-SUCH-SERIAL                     | Nothing in the register is called “NO-SUCH-SERIAL”
          1C00D11                            | misread or mistyped
          1CYGJ0K                            | holds no part of that number
          https://other.example/c/1C000PT    | another register, at https://other.example
          https://other.example/c/1C000PT    | --former-address
          """)
  void whatCannotBeTakenIsSaidAndTheOthersStay(String text, String told) {
    Document page = add(scanned(PROBE, CABLE), text);
    assertThat(complaint(page)).contains(told);
    assertThat(serials(page)).containsExactly(PROBE, CABLE);
    assertThat(page.select("#add").attr("value")).isEmpty();
  }

  @Test
  void anAddressOfOursThatIsNoLabelIsSaid() {
    assertThat(complaint(scanned(site.address() + "plant"))).contains("not that of a part");
    assertThat(complaint(scanned("x".repeat(500)))).contains("500 characters");
  }

  @Test
  void aFourthPartBetweenProbeAndDriverIsTooMany() {
    Document page = scanned(PROBE, CABLE, SHORTER, SCRAPPED_CABLE, "0041750");
    assertThat(complaint(page)).contains("the 4th part between probe and driver");
    assertThat(serials(page)).hasSize(4);
  }

  @Test
  void aLoopIsChosenByItsLabelOrItsTag() {
    String label = LabelCode.ofPoint(8).text();
    Document byLabel = scanned(PROBE, SHORTER, DRIVER, label);
    Document byTag = scanned("k101-v3x", PROBE, SHORTER, DRIVER);
    assertThat(byTag.select("h2:contains(Go on) + p").text())
        .isEqualTo("Judged for the loop K101-V3X.");
    assertThat(byLabel.select("h2:contains(Go on) + p").text()).startsWith("Judged for the loop ");
    assertThat(complaint(technician.get("/scan?loop=NOWHERE&part=1").page()))
        .contains("There is no loop NOWHERE");
  }

  @Test
  void ofAnotherLoopThePartsAreSaidToStandElsewhere() {
    Document page = scanned("K101-V3Y", PROBE, SHORTER, DRIVER);
    assertThat(word(page)).isEqualTo("refused");
    assertThat(page.select(".scan-say").text()).contains("also stands at K101-V3X");
  }

  @Test
  void surveyAndAssemblyGoOnWithWhatWasScanned() {
    Document page = scanned(PROBE, SHORTER, DRIVER);
    for (String way : List.of("assembly", "survey")) {
      String href = page.select("main a[href*=/" + way + "]").attr("href");
      Document form = technician.get(href).page();
      assertThat(form.select("h1").text()).contains("K101-V3X");
      assertThat(form.select("#probe").attr("value")).isEqualTo(PROBE);
      assertThat(form.select("#path-1").attr("value")).isEqualTo(SHORTER);
      assertThat(form.select("#path-2").attr("value")).isEmpty();
      assertThat(form.select("#driver").attr("value")).isEqualTo(DRIVER);
      assertThat(form.select("#judged").text()).doesNotContain("too long");
    }
    Document refused = scanned(PROBE, CABLE, DRIVER);
    assertThat(refused.select("main a[href*=/assembly]")).isEmpty();
    assertThat(refused.select("main a[href*=/concession]")).hasSize(1);
    Visitor viewer = signedIn("viewer");
    String same =
        "/scan?part=" + number(PROBE) + "&part=" + number(SHORTER) + "&part=" + number(DRIVER);
    assertThat(viewer.get(same).page().select("main a[href*=/survey]")).isEmpty();
    assertThat(word(viewer.get(same).page())).isEqualTo("attention");
  }

  @Test
  void anAddressThatSomebodyChangedIsReadAsFarAsItCanBe() {
    Visitor.Answer answer =
        technician.get("/scan?part=999999999&part=x&part=" + number(PROBE) + "&part=-3&cable=?");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(complaint(answer.page())).contains("no part with the number 999999999");
    assertThat(serials(answer.page())).containsExactly(PROBE);
    assertThat(answer.page().select("form.scan-form").first().select("input[name=part]"))
        .hasSize(1);
  }

  @Test
  void aPartIsTakenOutAgain() {
    Document page = scanned(PROBE, CABLE);
    String out = page.select(".scan-parts li").first().select(".scan-out").attr("href");
    assertThat(serials(technician.get(out).page())).containsExactly(CABLE);
  }

  @Test
  void onlyThisPageMayAskForTheCamera() {
    assertThat(technician.get("/scan").header("Permissions-Policy")).contains("camera=(self)");
    assertThat(technician.get("/parts").header("Permissions-Policy")).contains("camera=()");
    assertThat(technician.get("/scan").header("Content-Security-Policy"))
        .contains("script-src 'self';");
  }

  @Test
  void aPhotographOfALabelIsReadWithoutAScript() throws IOException {
    technician.get("/scan");
    Visitor.Answer read = photographed(png(site.address() + "c/" + code(CABLE)), number(PROBE));
    assertThat(read.status()).isEqualTo(303);
    Visitor.Answer added = technician.get(read.location());
    assertThat(serials(technician.get(added.location()).page())).containsExactly(PROBE, CABLE);
    Visitor.Answer blank = photographed(picture(new BufferedImage(300, 300, 1)), number(PROBE));
    assertThat(complaint(blank.page())).contains("No code was found in the picture");
    assertThat(serials(blank.page())).containsExactly(PROBE);
    Visitor.Answer noPicture = photographed("not a picture".getBytes(UTF_8), number(PROBE));
    assertThat(complaint(noPicture.page())).contains("No code was found in the picture");
  }

  @Test
  void aPictureOfTheCameraIsReadForBrowsersThatCannot() throws IOException {
    technician.get("/scan");
    Visitor.Answer seen = frame(png("https://loops.example/c/1C00D10"));
    assertThat(seen.status()).isEqualTo(200);
    assertThat(seen.body()).isEqualTo("https://loops.example/c/1C00D10");
    assertThat(frame(picture(new BufferedImage(300, 300, 1))).status()).isEqualTo(204);
    assertThat(new Visitor(site.address()).postBare("/scan/frame", new String[0]).status())
        .isNotEqualTo(200);
  }

  private static Visitor.Answer frame(byte[] picture) {
    return technician.send(
        technician
            .request("/scan/frame", "X-Csrf-Token", technician.token())
            .header("Content-Type", "image/jpeg")
            .POST(BodyPublishers.ofByteArray(picture)));
  }

  private static Visitor.Answer photographed(byte[] picture, long already) {
    String edge = "----edge";
    String start =
        field(edge, "csrf", technician.token())
            + field(edge, "part", Long.toString(already))
            + "--"
            + edge
            + "\r\nContent-Disposition: form-data; name=\"picture\"; filename=\"label.png\"\r\n"
            + "Content-Type: image/png\r\n\r\n";
    List<byte[]> body = new ArrayList<>();
    body.add(start.getBytes(UTF_8));
    body.add(picture);
    body.add(("\r\n--" + edge + "--\r\n").getBytes(UTF_8));
    return technician.send(
        technician
            .request("/scan/picture", "Origin", technician.origin())
            .header("Content-Type", "multipart/form-data; boundary=" + edge)
            .POST(BodyPublishers.ofByteArrays(body)));
  }

  private static String field(String edge, String name, String text) {
    return "--"
        + edge
        + "\r\nContent-Disposition: form-data; name=\""
        + name
        + "\"\r\n\r\n"
        + text
        + "\r\n";
  }

  private static byte[] png(String text) throws IOException {
    try {
      BitMatrix code = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 300, 300);
      BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
      for (int x = 0; x < 640; x++) {
        for (int y = 0; y < 480; y++) {
          boolean black = x >= 100 && x < 400 && y >= 50 && y < 350 && code.get(x - 100, y - 50);
          image.setRGB(x, y, black ? 0x202020 : 0xd8d4c8);
        }
      }
      return picture(image);
    } catch (com.google.zxing.WriterException impossible) {
      throw new AssertionError(impossible);
    }
  }

  private static byte[] picture(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }
}
