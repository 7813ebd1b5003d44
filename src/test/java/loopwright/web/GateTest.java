package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GateTest {
  private static final String[] FORM = {"serial", "00417", "length", "4.5", "version", "7"};
  private static SampleSite site;

  @BeforeAll
  static void start() {
    site = new SampleSite();
  }

  @AfterAll
  static void stop() {
    site.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/", "/sign-in", "/nowhere", "/health", "/assets/loopwright.css", "/api/x"})
  void everyAnswerCarriesThePolicy(String path) {
    Answer answer = site.stranger().get(path);
    assertThat(answer.header("Content-Security-Policy"))
        .isEqualTo(
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                + " font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self';"
                + " form-action 'self'; frame-ancestors 'none'; base-uri 'none'");
    assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
    assertThat(answer.header("Referrer-Policy")).isEqualTo("same-origin");
    assertThat(answer.header("Cross-Origin-Opener-Policy")).isEqualTo("same-origin");
    assertThat(answer.header("Server")).isEmpty();
    assertThat(answer.header("Strict-Transport-Security")).as("without TLS").isEmpty();
  }

  @Test
  void pagesAreNotKeptByTheBrowser() {
    assertThat(site.as("viewer").get("/").header("Cache-Control")).isEqualTo("no-store");
  }

  @Test
  void healthIsPlainAndOpen() {
    Answer answer = site.stranger().get("/health");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Type")).startsWith("application/json");
    assertThat(answer.body()).isEqualTo("{\"status\":\"up\"}");
    assertThat(answer.header("Set-Cookie")).isEmpty();
  }

  @ParameterizedTest(name = "{0} at {1}: {2}")
  @CsvSource({
    "viewer, /, 200",
    "viewer, /admin, 403",
    "technician, /admin, 403",
    "planner, /admin, 403",
    "engineer, /admin, 403",
    "administrator, /admin, 200",
    "administrator, /, 200",
  })
  void eachRoleSeesWhatItMay(String role, String path, int status) {
    assertThat(site.as(role).get(path).status()).isEqualTo(status);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"viewer, 403", "technician, 303", "planner, 303", "engineer, 303"})
  void eachRoleRecordsWhatItMay(String role, int status) {
    assertThat(site.as(role).post("/sample", FORM).status()).isEqualTo(status);
  }

  @Test
  void aRefusalNamesTheRoleAndTheRight() {
    Answer answer = site.as("planner").get("/admin");
    assertThat(answer.page().select("main").text())
        .contains("As planner you may not", "keep accounts and backups", "W-104");
  }

  @Test
  void aFormWithTheTokenIsTaken() {
    Visitor visitor = site.as("technician");
    Answer answer = visitor.post("/sample", FORM);
    assertThat(answer.location()).isEqualTo("/");
    assertThat(visitor.get("/").page().select("#notice").text()).isEqualTo("Stored 00417.");
    assertThat(visitor.get("/").page().select("#notice").text()).as("only once").isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"none", "wrong", "of another session"})
  void aFormWithoutTheTokenIsRefusedAndNothingIsStored(String which) {
    int before = site.pages.stored.size();
    Visitor visitor = site.as("technician");
    String token = which.equals("wrong") ? "x" : site.as("technician").token();
    String[] form = {"serial", "FORGED", "length", "4.5", "version", "7", "csrf", token};
    if (which.equals("none")) {
      form[6] = "other";
    }
    Answer answer = visitor.postBare("/sample", form, "Origin", "https://example.org");
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.page().select("main").text()).contains("nothing was stored", "Go back");
    assertThat(answer.body()).as("another site's words are not shown").doesNotContain("FORGED");
    assertThat(site.pages.stored).hasSize(before);
  }

  @ParameterizedTest
  @CsvSource({"same-origin, true", "same-site, false", "cross-site, false", "none, false"})
  void onlyOurOwnPagesWordsAreKept(String fetchedFrom, boolean kept) {
    Visitor visitor = site.as("technician");
    Answer answer = visitor.postBare("/sample", FORM, "Sec-Fetch-Site", fetchedFrom);
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.body().contains("00417")).isEqualTo(kept);
  }

  @Test
  void theScriptSendsTheTokenAsAHeader() {
    Visitor visitor = site.as("technician");
    Answer page = visitor.get("/");
    String header = page.page().body().attr("hx-headers");
    assertThat(header).isEqualTo("{\"X-Csrf-Token\":\"" + visitor.token() + "\"}");
    Answer answer = visitor.postBare("/sample", FORM, "X-Csrf-Token", visitor.token());
    assertThat(answer.status()).isEqualTo(303);
    assertThat(visitor.postBare("/sample", FORM, "X-Csrf-Token", "x").status()).isEqualTo(403);
  }

  @Test
  void theScriptIsToldInPlace() {
    Visitor stranger = site.stranger();
    Answer answer = stranger.get("/sample/part", "HX-Request", "true");
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.header("HX-Retarget")).isEqualTo("#notice");
    assertThat(answer.page().select("p.notice a").attr("href")).isEqualTo("/sign-in");
    assertThat(answer.page().select("header")).isEmpty();
  }

  @Test
  void aPartOfAPageComesAlone() {
    Answer answer = site.as("viewer").get("/sample/part", "HX-Request", "true");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.page().select("tbody tr")).hasSize(5);
    assertThat(answer.page().select("header, h1")).isEmpty();
  }

  @Test
  void programsAreAnsweredInTheirLanguage() {
    Answer out = site.stranger().get("/api/sample/refused");
    assertThat(out.status()).isEqualTo(401);
    assertThat(out.body()).contains("\"code\":\"W-105\"").doesNotContain("<");
    Visitor visitor = site.as("technician");
    Answer bare =
        visitor.send(
            visitor
                .request("/api/sample", "Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{}")));
    assertThat(bare.status()).isEqualTo(403);
    assertThat(bare.body()).contains("W-103");
    Answer with =
        visitor.send(
            visitor
                .request(
                    "/api/sample",
                    "Content-Type",
                    "application/json",
                    "X-Csrf-Token",
                    visitor.token())
                .POST(BodyPublishers.ofString("{}")));
    assertThat(with.body()).isEqualTo("{\"actor\":\"technician\"}");
  }

  @Test
  void navigationShowsOnlyWhatOneMayOpen() {
    assertThat(site.as("viewer").get("/").page().select("nav.wide a").eachText())
        .contains("Plant")
        .doesNotContain("Import");
    Answer planner = site.as("planner").get("/");
    assertThat(planner.page().select("nav.wide a").eachText()).contains("Import");
    assertThat(planner.page().select("nav.wide a[aria-current]").eachText())
        .containsExactly("Plant");
  }

  @Test
  void unitsShownAreRemembered() {
    Visitor visitor = site.as("viewer");
    visitor.get("/?page=2");
    Answer answer = visitor.post("/preferences", "units", "mil", "then", "/?page=2");
    assertThat(answer.location()).isEqualTo("/?page=2");
    assertThat(answer.header("Set-Cookie")).contains("units=mil", "SameSite=Strict", "HttpOnly");
    assertThat(visitor.get("/").page().select("footer b").text()).isEqualTo("mil, ft");
  }
}
