package loopwright.concession;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Concessions over HTTP: asked for, decided, ended, and what loops and the first page say. */
@Tag("zone")
class ConcessionPagesTest {
  private static final String LOOP = "/loops/V-1";
  private static final String ASK = LOOP + "/concession";

  private Shop shop;
  private Visitor technician;
  private Visitor engineer;

  /** V-1 holds a 4.5 m cable where 4.0 m belong. */
  @BeforeEach
  void start() {
    shop = new Shop();
    technician = shop.technician;
    engineer = shop.app.as("engineer");
    shop.point("V-1");
    shop.set(1);
    shop.part(PartKind.CABLE, "C-45", "4.5");
    assertThat(shop.survey("V-1", "2026-02-20", "P-1", "C-45", "D-1").status()).isEqualTo(303);
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  private Map<String, String> asking() {
    Map<String, String> fields = Shop.fields(technician.get(ASK).page());
    fields.put("rule", "length balance");
    fields.put("kind", "FULL");
    fields.put("until", "2026-04-01");
    fields.put("time", "08:00");
    fields.put("reason", "no cable of 4.0 m until April");
    fields.put("measure", "danger lowered by a tenth");
    return fields;
  }

  private Visitor.Answer ask(Visitor who, String... changed) {
    Map<String, String> fields = asking();
    for (int i = 0; i < changed.length; i += 2) {
      fields.put(changed[i], changed[i + 1]);
    }
    return who.post(ASK, Shop.flat(fields));
  }

  private Visitor.Answer decide(Visitor who, String what) {
    return who.post("/concessions/CN-1/" + what, "note", "looked at it");
  }

  private static List<String> buttons(Visitor who) {
    return who.get("/concessions/CN-1").page().select("main form button").eachText();
  }

  private void granted() {
    assertThat(ask(technician).location()).isEqualTo("/concessions/CN-1");
    assertThat(decide(engineer, "grant").status()).isEqualTo(303);
  }

  private String verdict(String query) {
    return technician.get(LOOP + query).page().select("h1 ~ p .verdict").first().text();
  }

  private String state() {
    return technician.get("/concessions/CN-1").page().select("h1 small").text();
  }

  private Document needs() {
    return technician.get("/").page();
  }

  @Test
  void oneAsksAnotherGrantsAndTheLoopSaysByWhoseLeave() {
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(technician.get(LOOP).page().select("main .acts a[href=" + ASK + "]")).hasSize(1);
    assertThat(ask(technician).location()).isEqualTo("/concessions/CN-1");
    assertThat(verdict("")).as("asked is not granted").isEqualTo("refused");
    assertThat(needs().select("tbody").text()).contains("CN-1", "Grant or decline it.");
    assertThat(buttons(technician)).containsExactly("Decline");
    assertThat(buttons(engineer)).containsExactly("Grant", "Decline");
    Visitor.Answer own = decide(technician, "grant");
    assertThat(own.status()).isEqualTo(422);
    assertThat(own.page().select(".complaints").text()).contains("Another person has to decide");
    assertThat(own.page().select("textarea[name=note]").val()).isEqualTo("looked at it");
    assertThat(decide(engineer, "grant").status()).isEqualTo(303);
    assertThat(verdict("")).isEqualTo("attention");
    Document page = technician.get(LOOP).page();
    assertThat(page.text())
        .contains("Left so under concession CN-1", "danger lowered by a tenth", "2026-04-01");
    Document one = technician.get("/concessions/CN-1").page();
    assertThat(one.text())
        .contains("extension cable C-45", "Demo Technician", "granted Demo Engineer");
    assertThat(technician.get("/concessions").page().select("tbody tr").text())
        .contains("CN-1 V-1 length balance full stands");
    assertThat(needs().select("tbody").text()).doesNotContain("Grant or decline it.");
  }

  @Test
  void anEngineerDecidesOnAFullOneAndAnyoneElseOnAProvisionalOne() {
    ask(engineer);
    Visitor.Answer refused = decide(technician, "grant");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select(".complaints").text()).contains("decided by an engineer");
    assertThat(
            ask(engineer, "kind", "PROVISIONAL", "until", "2026-03-04", "time", "11:00").status())
        .isEqualTo(303);
    assertThat(technician.post("/concessions/CN-2/grant", "note", "agreed by phone").status())
        .isEqualTo(303);
    assertThat(verdict("")).isEqualTo("attention");
  }

  @ParameterizedTest
  @CsvSource({
    "until, 2026-02-28, It would have ended before it began",
    "until, 2028-04-01, lasts 731 days at most",
    "until, soon, Give the day like",
    "time, 25:00, time",
    "reason, '', reason",
    "measure, '', meanwhile",
    "rule, same family, 'same family is not refused for these parts'",
    "rule, '', at least one refused rule",
    "kind, PROVISIONAL, lasts 72 hours at most",
    "kind, ALL, choose",
    "path-1, NOBODY, No part in the register is called NOBODY"
  })
  void whatIsTypedWrongIsSaidAndNothingIsAskedFor(String field, String typed, String said) {
    Visitor.Answer answer = ask(technician, field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text()).containsIgnoringCase(said);
    assertThat(answer.page().text()).doesNotContain("CN-1");
    assertThat(technician.get("/concessions/CN-1").status()).isEqualTo(404);
    if (!field.equals("path-1")) {
      assertThat(answer.page().select("textarea[name=measure], textarea[name=reason]").eachText())
          .contains(
              field.equals("reason")
                  ? "danger lowered by a tenth"
                  : "no cable of 4.0 m until April");
    }
  }

  @Test
  void whatIsUnknownIsNeverCovered() {
    shop.point("V-2");
    shop.part(PartKind.PROBE, "P-2", "1");
    assertThat(shop.survey("V-2", "2026-02-20", "P-2", "?", "D-1").status()).isEqualTo(303);
    Map<String, String> fields = asking();
    fields.putAll(Map.of("probe", "P-2", "path-1", "?", "driver", "D-1"));
    Visitor.Answer answer = technician.post("/loops/V-2/concession", Shop.flat(fields));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains("N-101");
  }

  @Test
  void itEndsByItselfAndTheLoopIsRefusedAgain() {
    granted();
    shop.app.clock.forward(Duration.ofDays(18));
    assertThat(needs().select("tbody").text()).as("near its end").contains("V-1");
    shop.app.clock.forward(Duration.ofDays(14));
    assertThat(needs().select("tbody tr:contains(V-1) .verdict").text()).isEqualTo("refused");
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(state()).isEqualTo("full · expired");
  }

  @Test
  void anyExchangeEndsIt() {
    granted();
    shop.part(PartKind.CABLE, "C-46", "4.5");
    assertThat(shop.survey("V-1", "2026-03-01", "P-1", "C-46", "D-1").status()).isEqualTo(303);
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(state()).isEqualTo("full · ended by exchange");
    shop.app.clock.forward(Duration.ofDays(1));
    assertThat(shop.survey("V-1", "2026-03-02", "P-1", "C-45", "D-1").status()).isEqualTo(303);
    assertThat(verdict("")).as("back again, but the leave is gone").isEqualTo("refused");
  }

  @Test
  void aPartFoundElsewhereEndsItToo() {
    granted();
    shop.point("V-2");
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.DRIVER, "D-2", "5");
    assertThat(shop.survey("V-2", "2026-03-01", "P-2", "C-45", "D-2").status()).isEqualTo(303);
    assertThat(state()).isEqualTo("full · ended by exchange");
  }

  @Test
  void aCorrectionOfTheRecordEndsItTooAndSaysSoBefore() {
    granted();
    shop.part(PartKind.CABLE, "C-46", "4.5");
    String path = LOOP + "/correction";
    Map<String, String> fields = Shop.fields(technician.get(path).page());
    fields.putAll(Map.of("slot", "path-1", "what", "part", "part", "C-46"));
    fields.putAll(Map.of("from", "2026-02-20 08:00", "until", "", "reason", "misread"));
    Document preview = technician.post(path, Shop.flat(fields)).page();
    assertThat(preview.select("main").text()).contains("Concession CN-1 ends");
    assertThat(state()).startsWith("full · stands");
    fields.put("seen", preview.select("input[name=seen]").attr("value"));
    assertThat(technician.post(path, Shop.flat(fields)).status()).isEqualTo(303);
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(state()).isEqualTo("full · ended by exchange");
  }

  @Test
  void declinedOrWithdrawnItStandsNoLongerAndIsNotDecidedTwice() {
    ask(technician);
    assertThat(decide(engineer, "decline").status()).isEqualTo(303);
    assertThat(state()).isEqualTo("full · declined");
    Visitor.Answer again = decide(engineer, "grant");
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.page().select(".complaints").text()).contains("no longer waiting");
    ask(technician);
    assertThat(engineer.post("/concessions/CN-2/grant", "note", "yes").status()).isEqualTo(303);
    assertThat(verdict("")).isEqualTo("attention");
    assertThat(engineer.post("/concessions/CN-2/withdraw", "note", "cable came").status())
        .isEqualTo(303);
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(engineer.post("/concessions/CN-2/withdraw", "note", "x").status()).isEqualTo(422);
    ask(technician);
    assertThat(engineer.post("/concessions/CN-3/grant", "note", "").page().text())
        .contains("the reason");
  }

  @Test
  void underOneThatStandsAnAssemblyIsRecorded() {
    shop.point("V-3");
    shop.part(PartKind.PROBE, "P-3", "1");
    shop.part(PartKind.DRIVER, "D-3", "5");
    shop.part(PartKind.CABLE, "C-47", "4.5");
    Map<String, String> parts = Map.of("probe", "P-3", "path-1", "C-47", "driver", "D-3");
    Map<String, String> assembly = Shop.fields(technician.get("/loops/V-3/assembly").page());
    assembly.putAll(parts);
    assembly.put("reason", "outage");
    Visitor.Answer refused = technician.post("/loops/V-3/assembly", Shop.flat(assembly));
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select("a[href*=/loops/V-3/concession]").attr("href"))
        .contains("path-1=C-47");
    Map<String, String> fields = asking();
    fields.putAll(parts);
    assertThat(technician.post("/loops/V-3/concession", Shop.flat(fields)).status()).isEqualTo(303);
    assertThat(decide(engineer, "grant").status()).isEqualTo(303);
    Visitor.Answer taken = technician.post("/loops/V-3/assembly", Shop.flat(assembly));
    assertThat(taken.page().select(".complaints").text()).isEmpty();
    assertThat(taken.status()).isEqualTo(303);
    assertThat(technician.get("/loops/V-3").page().select("h1 + p .verdict").text())
        .isEqualTo("attention");
  }

  @Test
  void aSurveyIsNoWayAroundARefusedAssembly() {
    shop.part(PartKind.CABLE, "C-46", "4.5");
    Map<String, String> assembly = Shop.fields(technician.get(LOOP + "/assembly").page());
    assembly.put("path-1", "C-46");
    assembly.put("out-path-1", "stock");
    assembly.put("reason", "outage");
    assertThat(technician.post(LOOP + "/assembly", Shop.flat(assembly)).status()).isEqualTo(422);
    shop.app.clock.forward(Duration.ofHours(2));
    assertThat(shop.survey("V-1", "2026-03-01", "P-1", "C-46", "D-1").status()).isEqualTo(303);
    assertThat(technician.get(LOOP).page().select("ol.story").text())
        .contains("left without concession");
    assertThat(needs().select("tbody tr:contains(V-1)").text())
        .contains("Left without concession.", "Or decide on a concession.", "engineer");
  }

  @Test
  void thePastShowsWhoAllowedItThenAndWhatWasKnown() {
    shop.app.clock.forward(Duration.ofDays(1));
    granted();
    shop.app.clock.forward(Duration.ofDays(3));
    decide(engineer, "withdraw");
    shop.app.clock.forward(Duration.ofDays(3));
    assertThat(verdict("")).isEqualTo("refused");
    assertThat(verdict("?at=2026-03-01+12:00")).as("before the grant").isEqualTo("refused");
    assertThat(verdict("?at=2026-03-03")).as("while it stood").isEqualTo("attention");
    assertThat(verdict("?at=2026-03-06")).isEqualTo("refused");
    assertThat(verdict("?at=2026-03-06&known=2026-03-03"))
        .as("not yet known")
        .isEqualTo("attention");
    assertThat(verdict("?at=2026-03-03&known=2026-03-01+12:00")).isEqualTo("refused");
  }

  @Test
  void whoOnlyLooksDecidesNothing() {
    ask(technician);
    Visitor viewer = shop.app.as("viewer");
    assertThat(viewer.get("/concessions/CN-1").page().select("main form")).isEmpty();
    assertThat(viewer.get(ASK).status()).isEqualTo(403);
    assertThat(ask(viewer).status()).isEqualTo(403);
    assertThat(decide(viewer, "grant").status()).isEqualTo(403);
    assertThat(technician.get("/loops/NOT-THERE/concession").status()).isEqualTo(404);
    for (String number : new String[] {"CN-9", "CN-x", "9"}) {
      assertThat(technician.get("/concessions/" + number).status()).as(number).isEqualTo(404);
    }
  }
}
