package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ErrorPagesTest {
  private static final int MEGABYTE = 1 << 20;
  private static SampleSite site;

  @BeforeAll
  static void start() {
    site = new SampleSite();
  }

  @AfterAll
  static void stop() {
    site.close();
  }

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource({
    "GET, /nowhere, 404, W-107, There is no page at this address",
    "GET, /sample, 405, W-108, can't be asked in this way",
    "GET, /sample/refused, 422, Z-1, That can't be so. Make it otherwise.",
    "GET, /sample/missing, 404, W-101, There is no loop T900.",
    "GET, /sample/bad, 400, W-109, could not be read",
    "GET, /admin, 403, W-104, you may not do this",
  })
  void aPersonIsToldWhatIsWrong(
      String method, String path, int status, String code, String sentence) {
    Answer answer = site.as("viewer").get(path);
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.page().select("main").text()).contains(code, sentence);
    assertThat(answer.page().select("nav.wide a")).as("the way on stays").isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nothing.css",
        "../pom.xml",
        "..%2Fpom.xml",
        "fonts",
        "loopwright.css/x",
        "a.class"
      })
  void onlyAssetsAreServedAsAssets(String path) {
    assertThat(site.stranger().get("/assets/" + path).status()).isIn(400, 404);
  }

  @Test
  void aFailureShowsANumberAndNothingOfTheInside() {
    Answer answer = site.as("viewer").get("/sample/broken");
    assertThat(answer.status()).isEqualTo(500);
    Matcher number =
        Pattern.compile("the number ([0-9a-f]{8});").matcher(answer.page().select("main").text());
    assertThat(number.find()).isTrue();
    assertThat(answer.body()).doesNotContain("secret", "Exception", "\tat ");
  }

  @Test
  void aBrokenTemplateIsAFailureToo() {
    Answer answer = site.as("viewer").get("/sample/no-template");
    assertThat(answer.status()).isEqualTo(500);
    assertThat(answer.page().select("main").text()).contains("the number");
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "/api/sample/refused, 422, Z-1",
    "/api/sample/broken, 500, W-110",
    "/api/nowhere, 404, W-107"
  })
  void aProgramIsToldWithACode(String path, int status, String code) {
    Answer answer = site.as("viewer").get(path);
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.header("Content-Type")).startsWith("application/json");
    assertThat(answer.body()).startsWith("{").contains("\"code\":\"" + code + "\"", "\"message\":");
  }

  @Test
  void aStaleFormIsShownAgainWithWhatWasTyped() {
    Answer answer =
        site.as("technician").post("/sample", "serial", "00417", "length", "4,5", "version", "6");
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.page().select(".complaints").text()).contains("changed this after");
    assertThat(answer.page().select("#serial").attr("value")).isEqualTo("00417");
    assertThat(answer.page().select("#length").attr("value")).isEqualTo("4,5");
    assertThat(answer.page().select("input[name=version]").attr("value")).isEqualTo("7");
  }

  @Test
  void aWrongFieldIsComplainedOfInPlace() {
    Answer answer =
        site.as("technician").post("/sample", "serial", " ", "length", "<four>", "version", "7");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#length").attr("value")).isEqualTo("<four>");
    assertThat(answer.page().select("#length").attr("aria-invalid")).isEqualTo("true");
    assertThat(answer.page().select("#length-about .complaint").text()).contains("not a length");
    assertThat(answer.page().select("#length").attr("aria-describedby")).isEqualTo("length-about");
    assertThat(answer.page().select(".complaints").text()).contains("2 fields");
  }

  @ParameterizedTest(name = "{1} MB of {0}, length told: {2}")
  @CsvSource({
    "application/x-www-form-urlencoded, 3, true, 2 MB",
    "application/x-www-form-urlencoded, 3, false, 2 MB",
    "application/json, 3, true, 2 MB",
    "multipart/form-data; boundary=cut, 61, true, 60 MB",
    "multipart/form-data; boundary=cut, 61, false, 60 MB",
  })
  void tooMuchIsRefusedInWords(String type, int megabytes, boolean lengthTold, String limit) {
    Visitor visitor = site.as("planner");
    BodyPublisher body =
        type.startsWith("multipart")
            ? multipart(visitor, megabytes)
            : BodyPublishers.ofByteArrays(
                Collections.nCopies(megabytes, "a".repeat(MEGABYTE).getBytes(UTF_8)));
    BodyPublisher sent =
        lengthTold ? BodyPublishers.fromPublisher(body, length(type, visitor, megabytes)) : body;
    Answer answer =
        visitor.send(
            visitor
                .request("/sample/file", "Content-Type", type, "Origin", visitor.origin())
                .POST(sent));
    assertThat(answer.status()).isEqualTo(413);
    assertThat(answer.page().select("main").text()).contains("larger than the " + limit, "W-106");
  }

  private static long length(String type, Visitor visitor, int megabytes) {
    return (long) megabytes * MEGABYTE
        + (type.startsWith("multipart") ? head(visitor).length + TAIL.length : 0);
  }

  private static final byte[] TAIL = "\r\n--cut--\r\n".getBytes(UTF_8);

  private static byte[] head(Visitor visitor) {
    return ("--cut\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n"
            + visitor.token()
            + "\r\n--cut\r\nContent-Disposition: form-data; name=\"note\"\r\n\r\nbig"
            + "\r\n--cut\r\nContent-Disposition: form-data; name=\"file\"; filename=\"big.csv\""
            + "\r\n\r\n")
        .getBytes(UTF_8);
  }

  private static BodyPublisher multipart(Visitor visitor, int megabytes) {
    byte[] megabyte = new byte[MEGABYTE];
    Arrays.fill(megabyte, (byte) 'a');
    List<byte[]> parts = new ArrayList<>(List.of(head(visitor)));
    parts.addAll(Collections.nCopies(megabytes, megabyte));
    parts.add(TAIL);
    return BodyPublishers.ofByteArrays(parts);
  }

  @Test
  void aBrokenUploadIsTheSendersFault() {
    Visitor visitor = site.as("planner");
    Answer answer =
        visitor.send(
            visitor
                .request("/sample/file", "Content-Type", "multipart/form-data; boundary=cut")
                .POST(BodyPublishers.ofString("no part at all")));
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.page().select("main").text()).contains("could not be read", "W-109");
  }

  @Test
  void aFileOfFiftyMegabytesArrives() {
    Visitor visitor = site.as("planner");
    Answer answer =
        visitor.send(
            visitor
                .request("/sample/file", "Content-Type", "multipart/form-data; boundary=cut")
                .POST(multipart(visitor, 50)));
    assertThat(answer.status()).isEqualTo(303);
    assertThat(site.pages.stored).contains("big " + 50L * MEGABYTE);
  }

  @Test
  void aFileFromSomebodySignedOutIsAnsweredInWords() {
    Visitor visitor = site.as("planner");
    visitor.loseSession();
    Answer answer =
        visitor.send(
            visitor
                .request("/sample/file", "Content-Type", "multipart/form-data; boundary=cut")
                .POST(multipart(visitor, 20)));
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.page().select(".complaints").text()).contains("choose it again");
  }

  @ParameterizedTest
  @CsvSource({"GET /%zz HTTP/1.1", "GET /a HTTP/9.9", "NONSENSE"})
  void aRequestTooBrokenForAnyRouteShowsNothingOfTheInside(String line) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", site.web.port())) {
      socket.getOutputStream().write((line + "\r\nHost: here\r\n\r\n").getBytes(UTF_8));
      socket.shutdownOutput();
      String answer = new String(socket.getInputStream().readAllBytes(), UTF_8);
      assertThat(answer).startsWith("HTTP/1.1 ").doesNotContainIgnoringCase("jetty");
      assertThat(answer).contains("could not be served").doesNotContain("<", "Exception");
    }
  }
}
