package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.testing.KnownPeople;
import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PasswordPagesTest {
  private static final String FRESH = "seven loud blue gates";
  private SampleSite site;

  @BeforeEach
  void start() {
    site = new SampleSite();
  }

  @AfterEach
  void stop() {
    site.close();
  }

  private static Answer change(Visitor visitor, String old, String fresh, String again) {
    return visitor.post(
        "/password", "old-password", old, "fresh-password", fresh, "again-password", again);
  }

  @Test
  void theNewPasswordCountsAtOnceAndOtherSessionsEnd() {
    Visitor here = site.as("technician");
    Visitor elsewhere = site.as("technician");
    assertThat(change(here, KnownPeople.PASSWORD, FRESH, FRESH).location()).isEqualTo("/");
    assertThat(here.get("/").page().select("#notice").text())
        .isEqualTo("Your password is changed.");
    assertThat(elsewhere.get("/").location()).startsWith("/sign-in");
    assertThat(site.stranger().signIn("technician", KnownPeople.PASSWORD).status()).isEqualTo(422);
    assertThat(site.stranger().signIn("technician", FRESH).status()).isEqualTo(303);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          too short      | five small grey pebbles | eleven char | eleven char | 12 to 200 characters; this one has 11
          not the same   | five small grey pebbles | seven loud blue gates | seven loud blue gate | not the same
          the old again  | five small grey pebbles | five small grey pebbles | five small grey pebbles | the old password
          old is wrong   | four small grey pebbles | seven loud blue gates | seven loud blue gates | not your present password
          """)
  void complaintsAreClear(String name, String old, String fresh, String again, String complaint) {
    Answer answer = change(site.as("technician"), old, fresh, again);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains(complaint);
    assertThat(answer.body()).as("never sent back").doesNotContain(fresh);
    assertThat(site.stranger().signIn("technician", KnownPeople.PASSWORD).status()).isEqualTo(303);
  }

  @Test
  void guessingTheOldPasswordIsSlowedDown() {
    Visitor visitor = site.as("technician");
    for (int i = 0; i < Throttle.TRIES; i++) {
      change(visitor, "guess " + i, FRESH, FRESH);
    }
    Answer answer = change(visitor, KnownPeople.PASSWORD, FRESH, FRESH);
    assertThat(answer.page().select(".complaints").text()).contains("Wait a minute");
  }

  @Test
  void aPasswordGivenBySomebodyElseIsChangedFirst() {
    site.people.askForNewPassword("planner");
    Visitor visitor = site.as("planner");
    assertThat(visitor.get("/").location()).isEqualTo("/password");
    assertThat(visitor.post("/sample", "serial", "1").location()).isEqualTo("/password");
    assertThat(visitor.get("/password").page().text()).contains("given to you by somebody else");
    change(visitor, KnownPeople.PASSWORD, FRESH, FRESH);
    assertThat(visitor.get("/").status()).isEqualTo(200);
  }

  @Test
  void signingOutIsPossibleBeforeThat() {
    site.people.askForNewPassword("planner");
    Visitor visitor = site.as("planner");
    assertThat(visitor.post("/sign-out").location()).isEqualTo("/sign-in?left");
  }
}
