package loopwright.importing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.time.Duration;
import java.util.Optional;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.journal.JournalStore;
import loopwright.people.People;
import loopwright.people.QuickAccounts;
import loopwright.testing.MigratedMemory;
import loopwright.testing.TestClock;
import loopwright.testing.Visitor;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ImportPagesTest {
  private static final String PARTS =
      "kind,maker,model,serial,length_m\nprobe,Anymaker,P,0041,1.0\nprobe,Anymaker,P,0042,1.0\n";

  private App app;
  private Web web;
  private Visitor planner;

  @BeforeEach
  void open() {
    app =
        App.open(
            MigratedMemory.place("import-pages"),
            Installation.Purpose.DEMO,
            new TestClock("2026-11-25T09:00:00Z"));
    QuickAccounts.create(app.database());
    web =
        app.serve(
            new WebSettings("127.0.0.1", 0, Duration.ofHours(1), Optional.empty()), "Test Marsh");
    planner = visitor("planner");
  }

  @AfterEach
  void close() throws Exception {
    web.close();
    app.close();
  }

  private Visitor visitor(String login) {
    Visitor visitor = new Visitor(web.address());
    assertThat(visitor.signIn(login, People.DEMO_PASSWORD).status()).isEqualTo(303);
    visitor.get("/password");
    return visitor;
  }

  /** Chooses files (name, text, …) as a browser sends them. */
  private static Visitor.Answer upload(Visitor visitor, String... namesAndTexts) {
    String line = "---------------------------7e1";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    part(body, line, "name=\"csrf\"", visitor.token());
    part(body, line, "name=\"mark\"", "");
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      String about = "name=\"files\"; filename=\"" + namesAndTexts[i] + "\"";
      part(body, line, about, namesAndTexts[i + 1]);
    }
    body.writeBytes(("--" + line + "--\r\n").getBytes(UTF_8));
    return visitor.send(
        visitor
            .request("/import", "Origin", visitor.origin())
            .header("Content-Type", "multipart/form-data; boundary=" + line)
            .POST(BodyPublishers.ofByteArray(body.toByteArray())));
  }

  private static void part(ByteArrayOutputStream body, String line, String about, String text) {
    body.writeBytes(
        ("--" + line + "\r\nContent-Disposition: form-data; " + about + "\r\n\r\n" + text + "\r\n")
            .getBytes(UTF_8));
  }

  private long head() {
    return app.database().read(JournalStore::head);
  }

  @Test
  void thePageTellsWhatCanBeRead() {
    Document page = planner.get("/import").page();
    assertThat(page.select("input[type=file][multiple]")).hasSize(1);
    assertThat(page.text()).contains("measured_at").contains("system_lengths_m");
  }

  @Test
  void aPlanIsShownThenWrittenOnceAndItsReceiptStays() {
    long before = head();
    Visitor.Answer sent = upload(planner, "parts.csv", PARTS);
    assertThat(sent.status()).isEqualTo(303);
    String address = sent.location();
    Document plan = planner.get(address).page();
    assertThat(plan.text()).contains("Nothing is written yet").contains("add 2 rows");
    assertThat(plan.select("button.go").text()).isEqualTo("Write these 2 rows");
    assertThat(head()).isEqualTo(before);

    assertThat(planner.post(address, "reason", "").status()).as("a reason is asked").isEqualTo(422);
    assertThat(head()).isEqualTo(before);
    assertThat(planner.post(address, "reason", "first list").status()).isEqualTo(303);
    assertThat(planner.post(address, "reason", "first list").status())
        .as("a second click")
        .isEqualTo(303);
    assertThat(head()).isEqualTo(before + 1);

    Document receipt = planner.get(address).page();
    assertThat(receipt.select("h1").text()).contains("Written").contains("2 added");
    assertThat(receipt.text()).contains("first list");
    assertThat(receipt.select("button.go")).isEmpty();
  }

  @Test
  void problemsComeFirstAndNothingCanBeWritten() {
    String address = upload(planner, "parts.csv", PARTS.replace("0042,1.0", "0042,400")).location();
    Document plan = planner.get(address).page();
    assertThat(plan.select("#problems")).hasSize(1);
    assertThat(plan.text()).contains("parts.csv").contains("length_m").contains("R-104");
    assertThat(plan.text()).doesNotContain("Write these");
    assertThat(planner.get(address + "?fate=refused").page().select("tr.wrong")).hasSize(1);
    Visitor.Answer forced = planner.post(address, "reason", "all the same");
    assertThat(forced.status()).isEqualTo(422);
    assertThat(forced.page().text()).contains("I-201");
  }

  @Test
  void whenTheRegisterMovedOnAnotherPlanIsOffered() {
    String address = upload(planner, "parts.csv", PARTS).location();
    String other = upload(planner, "more.csv", PARTS.replace("004", "005")).location();
    planner.post(other, "reason", "others first");
    Visitor.Answer moved = planner.post(address, "reason", "mine");
    assertThat(moved.status()).isEqualTo(409);
    assertThat(moved.page().select("form[action$=/again] button")).hasSize(1);
    String again = planner.post(address + "/again").location();
    assertThat(again).isNotEqualTo(address);
    assertThat(planner.post(again, "reason", "mine").status()).isEqualTo(303);
    assertThat(planner.get(again).page().text()).contains("2 added");
  }

  @Test
  void noFileAndAForgottenPlanAreToldInPlace() {
    Visitor.Answer none = upload(planner);
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.page().select(".complaint").text()).contains("Choose at least one CSV file");
    Visitor.Answer gone = planner.get("/import/abc");
    assertThat(gone.status()).isEqualTo(404);
    assertThat(gone.page().text()).contains("I-203");
  }

  @Test
  void aBinaryAndAnEmptyFileAreTold() {
    String address = upload(planner, "photo.csv", "\u0000\u0001\u0002", "none.csv", "").location();
    String text = planner.get(address).page().text();
    assertThat(text).contains("S-103").contains("S-105");
  }

  @Test
  void familiesAreWrittenByAnEngineer() {
    String families = "family,maker,scale_factor_mv_mil\nTEST-5,Anymaker,200\n";
    String address = upload(planner, "families.csv", families).location();
    Visitor.Answer refused = planner.post(address, "reason", "new family");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().text()).contains("I-207");
    Visitor engineer = visitor("engineer");
    engineer.get(address);
    assertThat(engineer.post(address, "reason", "new family").status()).isEqualTo(303);
  }

  @Test
  void technicianAndViewerMayNotImport() {
    assertThat(visitor("technician").get("/import").status()).isEqualTo(403);
    assertThat(visitor("viewer").get("/import").status()).isEqualTo(403);
  }
}
