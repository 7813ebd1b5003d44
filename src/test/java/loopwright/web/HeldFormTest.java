package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import loopwright.testing.FilledForm;
import loopwright.testing.KnownPeople;
import loopwright.testing.Visitor;
import loopwright.testing.Visitor.Answer;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A session that ran out must not eat a long form. */
class HeldFormTest {
  private static final String REMARK = "a long remark\nwith two lines, <b>marks</b> & \"quotes\"";
  private SampleSite site;

  @BeforeEach
  void start() {
    site = new SampleSite();
  }

  @AfterEach
  void stop() {
    site.close();
  }

  private static Answer sendForm(Visitor visitor) {
    return visitor.post(
        "/sample?from=here",
        "serial",
        "00417",
        "length",
        "4,5",
        "version",
        "7",
        "row",
        "1",
        "row",
        "2",
        "remark",
        REMARK);
  }

  @Test
  void whatWasTypedComesThroughSignInAndIsSentWhenThePersonSaysSo() {
    Visitor visitor = site.as("technician");
    visitor.loseSession();
    Answer out = sendForm(visitor);
    assertThat(out.status()).isEqualTo(401);
    assertThat(out.page().select(".complaints").text()).contains("What you typed is kept");
    assertThat(site.pages.stored).isEmpty();

    Answer wrong = visitor.post("/sign-in", withSignIn(out, "not it"));
    assertThat(wrong.status()).isEqualTo(422);

    Answer asked = visitor.post("/sign-in", withSignIn(wrong, KnownPeople.PASSWORD));
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.page().select("main").text()).contains("nothing is stored yet", "00417");
    assertThat(site.pages.stored).as("not without being asked").isEmpty();

    Element form = asked.page().select("main form").first();
    assertThat(form.attr("action")).isEqualTo("/sample?from=here");
    List<String> fields = fields(form.select("input[type=hidden]:not([name=csrf])"));
    assertThat(fields)
        .containsExactly(
            "serial", "00417", "length", "4,5", "version", "7", "row", "1", "row", "2", "remark",
            REMARK);
    Answer sent = visitor.post(form.attr("action"), fields.toArray(String[]::new));
    assertThat(sent.location()).isEqualTo("/");
    assertThat(site.pages.stored).containsExactly("technician 00417");
  }

  private static String[] withSignIn(Answer page, String password) {
    List<String> fields = fields(page.page().select("form input[type=hidden]:not([name=csrf])"));
    fields.addAll(List.of("login", "technician", "password", password));
    return fields.toArray(String[]::new);
  }

  private static List<String> fields(Elements inputs) {
    List<String> fields = new ArrayList<>();
    inputs.forEach(input -> fields.addAll(List.of(input.attr("name"), input.attr("value"))));
    return fields;
  }

  @Test
  void aFormWithFilesComesThroughWithoutThem() {
    Visitor visitor = site.as("technician");
    FilledForm sent =
        FilledForm.to("/sample", visitor.token())
            .set("serial", "00417")
            .set("length", "4,5")
            .set("version", "7")
            .set("row", "1", "", "2")
            .set("remark", REMARK.replace("\n", "\r\n"))
            .set("password", "secret one")
            .choose("file", "curve.csv", "gap_um,volts\n");
    visitor.loseSession();
    Answer out = sent.send(visitor, "do", "keep");
    assertThat(out.status()).isEqualTo(401);
    assertThat(out.page().select(".complaints").text())
        .contains("What you typed is kept")
        .contains("A file can't be kept");
    assertThat(out.body()).doesNotContain("secret one");

    FilledForm door = FilledForm.of(out.page(), "main form").set("login", "technician");
    Answer asked = door.set("password", KnownPeople.PASSWORD).send(visitor, "x", "");
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.page().select("main .notice").text()).contains("Choose it again");
    assertThat(site.pages.stored).as("not without being asked").isEmpty();
    FilledForm held = FilledForm.of(asked.page(), "main form");
    assertThat(held.values("row")).containsExactly("1", "", "2");
    assertThat(held.values("remark").get(0)).contains("two lines, <b>marks</b>");
    assertThat(held.values("do")).containsExactly("keep");
    assertThat(held.send(visitor, "x", "").location()).isEqualTo("/");
    assertThat(site.pages.stored).containsExactly("technician 00417");
  }

  @Test
  void aFileAloneIsNothingToCarry() {
    Visitor visitor = site.as("planner");
    FilledForm sent =
        FilledForm.to("/sample/file", visitor.token()).choose("file", "parts.csv", "a,b\n");
    visitor.loseSession();
    Answer out = sent.send(visitor, "do", "");
    assertThat(out.status()).isEqualTo(401);
    assertThat(out.page().select(".complaints").text())
        .contains("A file can't be kept")
        .doesNotContain("What you typed");
  }

  @Test
  void anotherSitesFormWithAFileIsNotCarriedOn() {
    Visitor visitor = site.stranger();
    Answer answer =
        FilledForm.to("/sample", "")
            .set("serial", "FORGED")
            .from("https://example.org")
            .send(visitor, "do", "");
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.body()).doesNotContain("FORGED");
  }

  @Test
  void aFormOfAnEarlierSessionIsShownBeforeItIsSent() {
    Visitor visitor = site.as("technician");
    String old = visitor.token();
    visitor.signIn("technician", KnownPeople.PASSWORD);
    Answer answer =
        visitor.postBare(
            "/sample",
            new String[] {"csrf", old, "serial", "00417", "length", "4.5", "version", "7"},
            "Origin",
            visitor.origin());
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.page().select("main").text()).contains("nothing is stored yet", "00417");
    assertThat(site.pages.stored).isEmpty();
  }

  @Test
  void anotherSitesFormIsNotCarriedOn() {
    Visitor visitor = site.stranger();
    Answer answer =
        visitor.postBare(
            "/sample", new String[] {"serial", "FORGED"}, "Origin", "https://example.org");
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.body()).doesNotContain("FORGED");
  }

  @Test
  void passwordsAreNotCarriedOn() {
    Visitor visitor = site.as("technician");
    visitor.loseSession();
    Answer answer = visitor.post("/password", "old-password", "secret one", "other", "kept");
    assertThat(answer.body()).contains("kept").doesNotContain("secret one");
  }

  @Test
  void aCarriedPathElsewhereIsDropped() {
    Visitor visitor = site.stranger();
    visitor.get("/sign-in");
    Answer answer =
        visitor.post(
            "/sign-in",
            "login",
            "technician",
            "password",
            KnownPeople.PASSWORD,
            "held-path",
            "//example.org/",
            "held.serial",
            "00417");
    assertThat(answer.location()).isEqualTo("/");
  }

  @Test
  void whatAFeatureRefusesIsShownAgain() {
    Visitor visitor = site.as("technician");
    Answer answer = visitor.post("/sample/refused", "remark", REMARK);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("td.typed").eachText()).hasSize(1);
    assertThat(answer.page().select("main form input[name=remark]").attr("value"))
        .isEqualTo(REMARK);
  }
}
