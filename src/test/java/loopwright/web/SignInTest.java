package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import loopwright.testing.KnownPeople;
import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignInTest {
  private static SampleSite site;

  @BeforeAll
  static void start() {
    site = new SampleSite();
  }

  @AfterAll
  static void stop() {
    site.close();
  }

  @Test
  void aStrangerIsAskedToSignInAndThenTakenWhereTheyWanted() {
    Visitor visitor = site.stranger();
    Answer sent = visitor.get("/?kind=probe");
    assertThat(sent.status()).isEqualTo(303);
    assertThat(sent.location()).isEqualTo("/sign-in?then=%2F%3Fkind%3Dprobe");
    Answer asked = visitor.get(sent.location());
    assertThat(asked.page().select("input[name=then]").attr("value")).isEqualTo("/?kind=probe");
    assertThat(signIn(visitor, "/?kind=probe").location()).isEqualTo("/?kind=probe");
    assertThat(visitor.get("/?kind=probe").page().title()).isEqualTo("Sample · Loopwright");
  }

  @ParameterizedTest
  @ValueSource(strings = {"//example.org/", "https://example.org/", "/\\example.org", "/sign-out"})
  void nobodyIsSentElsewhereAfterSignIn(String then) {
    Visitor visitor = site.stranger();
    visitor.get("/sign-in");
    assertThat(signIn(visitor, then).location()).isEqualTo("/");
  }

  private static Answer signIn(Visitor visitor, String then) {
    return visitor.post(
        "/sign-in", "login", "planner", "password", KnownPeople.PASSWORD, "then", then);
  }

  @Test
  void theSessionCookieIsStrictAndItsIdChangesAtSignIn() {
    Visitor visitor = site.stranger();
    String before = visitor.get("/sign-in").header("Set-Cookie");
    assertThat(before).startsWith("loopwright=").contains("HttpOnly", "SameSite=Strict", "Path=/");
    assertThat(before).as("no Secure without TLS").doesNotContain("Secure");
    String after = signIn(visitor, "/").header("Set-Cookie");
    assertThat(after).startsWith("loopwright=").contains("HttpOnly", "SameSite=Strict");
    assertThat(id(after)).isNotEqualTo(id(before));
  }

  private static String id(String cookie) {
    return cookie.substring(0, cookie.indexOf(';'));
  }

  @Test
  void theTokenChangesAtSignInToo() {
    Visitor visitor = site.stranger();
    visitor.get("/sign-in");
    String before = visitor.token();
    signIn(visitor, "/");
    visitor.get("/");
    assertThat(visitor.token()).isNotEmpty().isNotEqualTo(before);
  }

  @Test
  void noLinkCarriesTheSession() {
    Visitor visitor = site.stranger();
    assertThat(visitor.get("/sign-in").body()).doesNotContainIgnoringCase("jsessionid");
    assertThat(visitor.get("/").location()).doesNotContainIgnoringCase("jsessionid");
  }

  @Test
  void wrongPasswordAndUnknownLoginReadTheSame() {
    Answer wrong = site.stranger().signIn("viewer", "not it");
    Answer unknown = site.stranger().signIn("nobody-of-that-name", "not it");
    assertThat(wrong.status()).isEqualTo(unknown.status()).isEqualTo(422);
    assertThat(complaint(wrong)).isEqualTo(complaint(unknown)).contains("don't go together");
    assertThat(wrong.page().select("#login").attr("value")).isEqualTo("viewer");
    assertThat(wrong.body()).doesNotContain("not it");
  }

  private static String complaint(Answer answer) {
    return answer.page().select(".complaints").text();
  }

  @Test
  void afterFiveWrongPasswordsEvenTheRightOneWaits() {
    Visitor visitor = site.stranger();
    List<Integer> statuses = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      statuses.add(visitor.signIn("engineer", "guess " + i).status());
    }
    assertThat(statuses).containsExactly(422, 422, 422, 422, 422, 429);
    Answer waiting = visitor.signIn("engineer", KnownPeople.PASSWORD);
    assertThat(waiting.status()).isEqualTo(429);
    assertThat(waiting.header("Retry-After")).isEqualTo("60");
    assertThat(complaint(waiting)).contains("Wait 60 seconds", "ask your administrator");
    site.now = site.now.plusSeconds(60);
    assertThat(visitor.signIn("engineer", KnownPeople.PASSWORD).status()).isEqualTo(303);
  }

  @Test
  void signingOutEndsTheSession() {
    Visitor visitor = site.as("planner");
    visitor.get("/");
    assertThat(visitor.post("/sign-out").location()).isEqualTo("/sign-in?left");
    assertThat(visitor.get("/sign-in?left").page().text()).contains("You have signed out.");
    assertThat(visitor.get("/").location()).startsWith("/sign-in");
    assertThat(visitor.post("/sign-out").location()).as("once more").startsWith("/sign-in");
  }

  @Test
  void aClosedAccountIsOutAtOnce() {
    try (SampleSite own = new SampleSite()) {
      Visitor visitor = own.as("technician");
      assertThat(visitor.get("/").status()).isEqualTo(200);
      own.people.close("technician");
      assertThat(visitor.get("/").location()).startsWith("/sign-in");
    }
  }

  @Test
  void aSignInPageOpenForTooLongIsOnlyAskedAgain() {
    Visitor visitor = site.stranger();
    visitor.get("/sign-in");
    visitor.loseSession();
    Answer again = signIn(visitor, "/?kind=probe");
    assertThat(again.status()).isEqualTo(403);
    assertThat(complaint(again)).contains("open for too long");
    assertThat(again.page().select("#login").attr("value")).isEqualTo("planner");
    assertThat(signIn(visitor, "/").status()).isEqualTo(303);
  }

  /** A strict cookie is not sent when a link on another site is followed. */
  @Test
  void aLinkFromElsewhereIsAskedOnceMoreFromOurOwnPage() {
    Answer bridge = site.stranger().get("/?q=1&r=2", "Sec-Fetch-Site", "cross-site");
    assertThat(bridge.status()).isEqualTo(200);
    assertThat(bridge.page().select("meta[http-equiv=refresh]").attr("content"))
        .isEqualTo("0;url=/?q=1&r=2");
  }
}
