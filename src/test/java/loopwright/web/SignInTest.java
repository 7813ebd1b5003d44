package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.testing.KnownPeople;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

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
    Visitor.Answer sent = visitor.get("/?kind=probe");
    assertThat(sent.location()).isEqualTo("/sign-in?then=%2F%3Fkind%3Dprobe");
    Visitor.Answer asked = visitor.get(sent.location());
    assertThat(asked.page().select("input[name=then]").attr("value")).isEqualTo("/?kind=probe");
    Visitor.Answer in =
        visitor.post(
            "/sign-in",
            "login",
            "planner",
            "password",
            KnownPeople.PASSWORD,
            "then",
            "/?kind=probe");
    assertThat(in.location()).isEqualTo("/?kind=probe");
    assertThat(visitor.get("/?kind=probe").page().title()).isEqualTo("Sample · Loopwright");
  }
}
