package loopwright.loop;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.LOOP_EVENT;
import static loopwright.db.gen.Tables.PLACEMENT;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import loopwright.db.Tx;
import loopwright.matching.PartKind;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.PartIdentity;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import loopwright.time.Span;
import org.jooq.Table;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Survey and assembly over HTTP, and everything that can be typed wrong there. */
@Tag("zone")
class ChangePagesTest {
  private final PlacementStore placements = new PlacementStore();
  private Shop shop;
  private Visitor technician;
  private long first;
  private long second;

  @BeforeEach
  void start() {
    shop = new Shop();
    technician = shop.technician;
    first = shop.point("V-1");
    second = shop.point("V-2");
    shop.set(1);
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  private Map<String, String> opened(String path) {
    return Shop.fields(technician.get(path).page());
  }

  private Visitor.Answer post(String path, Map<String, String> fields) {
    return technician.post(path, Shop.flat(fields));
  }

  private Visitor.Answer post(String path, Map<String, String> fields, String name, String value) {
    fields.put(name, value);
    return post(path, fields);
  }

  private Map<String, String> chain(String path, String probe, String cable, String driver) {
    Map<String, String> fields = opened(path);
    fields.put("probe", probe);
    fields.put("path-1", cable);
    fields.put("driver", driver);
    fields.put("reason", "outage 4");
    return fields;
  }

  private int rows(Table<?> table) {
    return shop.app.database().read(sql -> sql.fetchCount(table));
  }

  private List<String> events() {
    return shop.app.database().read(sql -> sql.selectFrom(LOOP_EVENT).fetch(LOOP_EVENT.KIND));
  }

  private List<Placed> at(long point, String moment) {
    return shop.app.database().read(sql -> placements.at(sql, point, Instant.parse(moment)));
  }

  private static String complaint(Visitor.Answer answer, String field) {
    return answer.page().select("#" + field + "-about .complaint").text();
  }

  @Test
  void aSurveyIsRecordedAsFoundAndJudged() {
    Document page = technician.get("/loops/V-1/survey").page();
    assertThat(page.select("tbody tr td.why").eachText())
        .containsExactly(
            "not recorded", "none fitted", "none fitted", "none fitted", "not recorded");
    assertThat(page.select("input[name=on]").val()).isEqualTo("2026-03-01");
    assertThat(page.select("input[name=time]").val()).isEqualTo("11:15");
    Visitor.Answer answer =
        post("/loops/V-1/survey", chain("/loops/V-1/survey", "p-1", "C-1", "D-1"));
    assertThat(answer.location()).isEqualTo("/loops/V-1");
    Document loop = technician.get("/loops/V-1").page();
    assertThat(loop.select("#notice").text()).contains("Survey recorded; the loop is judged:");
    assertThat(loop.select("ol.story li").text())
        .contains("2026-03-01 11:15 survey", "outage 4", "entered by Demo Technician");
    assertThat(at(first, "2026-03-01T10:15:30Z")).hasSize(3);
    Map<String, String> again = opened("/loops/V-1/survey");
    assertThat(again).containsEntry("probe", "P-1").containsEntry("driver", "D-1");
    assertThat(again).containsEntry("path-1", "C-1").containsEntry("path-2", "");
  }

  @Test
  void whatCantBeReadIsRecordedAsNotKnown() {
    assertThat(shop.survey("V-1", "2026-02-01", "?", "", "").status()).isEqualTo(303);
    assertThat(at(first, "2026-02-02T00:00:00Z"))
        .extracting(Placed::slot, Placed::content)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(Slot.PROBE, new Content.Unknown()),
            org.assertj.core.groups.Tuple.tuple(Slot.PATH_1, new Content.None()),
            org.assertj.core.groups.Tuple.tuple(Slot.DRIVER, new Content.Unknown()));
    Document page = technician.get("/loops/V-1").page();
    assertThat(page.select("h1 + p .verdict").text()).isEqualTo("unknown");
    assertThat(opened("/loops/V-1/survey"))
        .containsEntry("probe", "?")
        .containsEntry("driver", "?");
  }

  @Test
  void anAssemblyThatMatchesIsRecordedAndOneThatDoesNotIsNot() {
    shop.part(PartKind.CABLE, "C-45", "4.5");
    Map<String, String> fields = chain("/loops/V-1/assembly", "P-1", "C-45", "D-1");
    Visitor.Answer refused = post("/loops/V-1/assembly", fields);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select(".complaints").text())
        .contains("not recorded as left")
        .contains("L-104");
    assertThat(refused.page().select("#judged").text())
        .contains("On the shelf instead C-1 extension cable 4.0 m")
        .contains("+0.5 m");
    assertThat(refused.page().select("input[name=path-1]").val()).isEqualTo("C-45");
    assertThat(refused.page().select("textarea[name=reason]").val()).isEqualTo("outage 4");
    assertThat(rows(PLACEMENT)).isZero();
    assertThat(events()).containsExactly("assembly not recorded");
    assertThat(post("/loops/V-1/assembly", fields, "path-1", "C-1").status()).isEqualTo(303);
    assertThat(technician.get("/loops/V-1").page().select("ol.story").text())
        .contains("assembly attention");
  }

  @Test
  void theDayAPartIsKnownFromCanBeMovedBack() {
    Map<String, String> facts = opened("/parts/1/facts");
    facts.put("from", "2019-05-01");
    facts.put("reason", "found in the old book");
    assertThat(post("/parts/1/facts", facts).status()).isEqualTo(303);
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "", "");
    assertThat(post("/loops/V-1/survey", fields, "on", "2020-01-01").status()).isEqualTo(303);
  }

  @Test
  void aPartFoundHereLeavesItsOldLoopUnknown() {
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.DRIVER, "D-2", "5");
    assertThat(shop.survey("V-2", "2026-02-10", "P-2", "C-1", "D-2").status()).isEqualTo(303);
    Document old = technician.get("/loops/V-1").page();
    assertThat(old.select("h1 + p .verdict").text()).isEqualTo("unknown");
    assertThat(old.select("ol.story").text()).contains("A part of this loop was found at V-2");
    assertThat(at(first, "2026-02-05T00:00:00Z"))
        .hasSize(3)
        .noneMatch(p -> p.content() instanceof Content.Unknown);
    assertThat(opened("/loops/V-1/survey")).containsEntry("path-1", "?");
  }

  @Test
  void anAssemblyWithAPartFittedElsewhereIsToldWhereAndByWhom() {
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.DRIVER, "D-2", "5");
    Visitor.Answer answer =
        post("/loops/V-2/assembly", chain("/loops/V-2/assembly", "P-2", "C-1", "D-2"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text())
        .contains("also stands at V-1 (recorded by Demo Technician)");
  }

  @Test
  void aFormOpenedBeforeSomebodyElseChangedTheLoopIsShownAgainWithWhoAndWhen() {
    Map<String, String> fields = chain("/loops/V-1/assembly", "P-1", "C-1", "D-1");
    shop.part(PartKind.PROBE, "P-2", "1");
    Visitor engineer = shop.app.as("engineer");
    Map<String, String> theirs = Shop.fields(engineer.get("/loops/V-1/survey").page());
    theirs.put("probe", "P-2");
    theirs.put("reason", "looked");
    assertThat(engineer.post("/loops/V-1/survey", Shop.flat(theirs)).status()).isEqualTo(303);
    Visitor.Answer late = post("/loops/V-1/assembly", fields);
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.page().select(".complaints").text())
        .contains("Demo Engineer recorded a survey here on 2026-03-01 11:15");
    assertThat(late.page().select("input[name=probe]").val()).isEqualTo("P-1");
    assertThat(late.page().select("tbody tr").first().text()).contains("P-2");
    assertThat(late.page().select("#judged").text()).contains("Length balance");
    assertThat(at(first, "2026-03-01T10:15:30Z")).hasSize(3);
    Map<String, String> seen = Shop.fields(late.page());
    assertThat(post("/loops/V-1/assembly", seen).status()).isEqualTo(303);
  }

  @Test
  void theSameFormSentTwiceIsRecordedOnce() {
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "C-1", "D-1");
    assertThat(post("/loops/V-1/survey", fields).status()).isEqualTo(303);
    int changes = rows(CHANGE);
    assertThat(post("/loops/V-1/survey", fields).status()).isEqualTo(409);
    assertThat(rows(CHANGE)).isEqualTo(changes);
    assertThat(rows(LOOP_EVENT)).isEqualTo(1);
  }

  private List<Visitor.Answer> atOnce(List<Callable<Visitor.Answer>> work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(work.size());
    CyclicBarrier start = new CyclicBarrier(work.size());
    try {
      List<Future<Visitor.Answer>> answers =
          work.stream()
              .map(
                  one ->
                      threads.submit(
                          () -> {
                            start.await();
                            return one.call();
                          }))
              .toList();
      return List.of(answers.get(0).get(), answers.get(1).get());
    } finally {
      threads.shutdownNow();
    }
  }

  @RepeatedTest(4)
  void twoTechniciansAssembleTheSameCableAtTheSameSecond() throws Exception {
    shop.part(PartKind.PROBE, "P-2", "1");
    shop.part(PartKind.DRIVER, "D-2", "5");
    Visitor other = shop.app.as("engineer");
    Map<String, String> mine = chain("/loops/V-1/assembly", "P-1", "C-1", "D-1");
    Map<String, String> theirs = Shop.fields(other.get("/loops/V-2/assembly").page());
    theirs.putAll(Map.of("probe", "P-2", "path-1", "C-1", "driver", "D-2", "reason", "x"));
    List<Visitor.Answer> answers =
        atOnce(
            List.of(
                () -> post("/loops/V-1/assembly", mine),
                () -> other.post("/loops/V-2/assembly", Shop.flat(theirs))));
    assertThat(answers).extracting(Visitor.Answer::status).containsExactlyInAnyOrder(303, 422);
    boolean won = answers.get(0).status() == 303;
    Visitor.Answer lost = answers.get(won ? 1 : 0);
    String told =
        "also stands at "
            + (won ? "V-1 (recorded by Demo Technician)" : "V-2 (recorded by Demo Engineer)");
    assertThat(lost.page().select(".complaints").text()).contains(told);
    assertThat(lost.page().select("#judged").text()).as("fresh findings").contains(told);
    assertThat(lost.page().select("input[name=path-1]").val()).isEqualTo("C-1");
    assertThat(events()).containsExactlyInAnyOrder("assembly", "assembly not recorded");
    assertThat(rows(PLACEMENT)).isEqualTo(3);
  }

  @RepeatedTest(4)
  void twoTechniciansRecordTheSameLoopAtTheSameSecond() throws Exception {
    shop.set(2);
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
    Visitor other = shop.app.as("engineer");
    Map<String, String> mine = chain("/loops/V-1/survey", "P-1", "C-2", "D-1");
    Map<String, String> theirs = Shop.fields(other.get("/loops/V-1/survey").page());
    theirs.putAll(Map.of("driver", "D-2", "reason", "x"));
    List<Visitor.Answer> answers =
        atOnce(
            List.of(
                () -> post("/loops/V-1/survey", mine),
                () -> other.post("/loops/V-1/survey", Shop.flat(theirs))));
    assertThat(answers).extracting(Visitor.Answer::status).containsExactlyInAnyOrder(303, 409);
    Visitor.Answer lost = answers.get(answers.get(0).status() == 303 ? 1 : 0);
    assertThat(lost.page().select(".complaints").text()).contains("recorded a survey here");
    assertThat(rows(LOOP_EVENT)).isEqualTo(2);
  }

  @Test
  void slotsBeyondTheFormsOwnAreShownAndNotLost() {
    shop.set(2);
    ComponentId fourth = shop.part(PartKind.CABLE, "C-4", "1");
    shop.app.write(
        tx -> {
          fit(tx, first, Slot.PATH_4, new Content.Part(fourth.number()));
          return true;
        });
    Map<String, String> fields = opened("/loops/V-1/survey");
    assertThat(fields).containsEntry("path-4", "C-4");
    fields.put("probe", "P-1");
    fields.put("reason", "round");
    assertThat(post("/loops/V-1/survey", fields).status()).isEqualTo(303);
    assertThat(at(first, "2026-03-01T10:15:30Z"))
        .anyMatch(placed -> placed.content().equals(new Content.Part(fourth.number())));
  }

  private void fit(Tx tx, long point, Slot slot, Content content) {
    placements.rewrite(
        tx,
        List.of(),
        List.of(
            Placed.fresh(
                point, slot, content, Span.from(Instant.parse("2026-02-01T00:00:00Z")), "survey")));
  }

  private ComponentId box() {
    ComponentDetails details =
        new ComponentDetails(
            PartKind.DRIVER, new PartIdentity("Nordling", "X9", "BOX", ""), 2, "", null, "");
    return shop.part(details, ComponentFacts.NOTHING_KNOWN);
  }

  @Test
  void anotherChannelOfADriverBoxStaysTheChannelItIs() {
    Content.Part one = new Content.Part(box().number(), 1);
    Content.Part two = new Content.Part(one.number(), 2);
    shop.app.write(
        tx -> {
          fit(tx, first, Slot.DRIVER, one);
          fit(tx, second, Slot.DRIVER, two);
          return true;
        });
    assertThat(opened("/loops/V-1/survey")).containsEntry("driver", "BOX");
    Map<String, String> fields = opened("/loops/V-2/survey");
    assertThat(fields).containsEntry("driver", "BOX #2");
    fields.put("probe", "P-1");
    fields.put("reason", "round");
    assertThat(post("/loops/V-2/survey", fields, "driver", "BOX").status()).isEqualTo(303);
    assertThat(at(first, "2026-03-01T10:15:30Z")).extracting(Placed::content).contains(one);
    assertThat(at(second, "2026-03-01T10:15:30Z")).extracting(Placed::content).contains(two);
  }

  @Test
  void ofADriverBoxTheChannelIsAsked() {
    Content.Part two = new Content.Part(box().number(), 2);
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "C-1", "BOX");
    for (String typed : List.of("BOX", "BOX #0", "BOX #3")) {
      Visitor.Answer asked = post("/loops/V-1/survey", fields, "driver", typed);
      assertThat(complaint(asked, "driver"))
          .isEqualTo("BOX has 2 channels. Say which one belongs to this loop, such as BOX #1.");
    }
    assertThat(post("/loops/V-1/survey", fields, "driver", "box #2").status()).isEqualTo(303);
    assertThat(at(first, "2026-03-01T10:15:30Z")).extracting(Placed::content).contains(two);
    assertThat(technician.get("/loops/V-1/survey").page().select("td.why").text())
        .contains("BOX #2 Nordling X9");
  }

  @Test
  void ofPartsThatShareASerialTheOneMeantIsSaid() {
    shop.part(PartKind.CABLE, new PartIdentity("Sundqvard", "K2", "C-1", ""), "4");
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "C-1", "D-1");
    Visitor.Answer asked = post("/loops/V-1/survey", fields);
    assertThat(complaint(asked, "path-1"))
        .contains("2 parts are called C-1")
        .contains("Sundqvard K2");
    String about =
        complaint(asked, "path-1")
            .replaceAll(".*(4\\.0 m · Sundqvard K2[^;.]*?)(;|\\. Type).*", "$1");
    assertThat(post("/loops/V-1/survey", fields, "path-1", "C-1 · " + about).status())
        .isEqualTo(303);
    Map<String, String> again = opened("/loops/V-1/survey");
    again.put("reason", "nothing changed");
    Visitor.Answer same = post("/loops/V-1/survey", again);
    assertThat(same.status()).as("what the form itself filled in can be sent back").isEqualTo(303);
    assertThat(rows(PLACEMENT)).isEqualTo(3);
  }

  @Test
  void aPartWithoutASerialIsKnownByItsShopNumber() {
    shop.part(PartKind.CABLE, new PartIdentity("Nordling", "X9", "", "SH 7 · red"), "4");
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "SH 7 · red", "D-1");
    assertThat(post("/loops/V-1/survey", fields).status()).isEqualTo(303);
    assertThat(opened("/loops/V-1/survey")).containsEntry("path-1", "SH 7 · red");
  }

  @Test
  void findingsChangeWhileChoosing() {
    Document judged =
        technician
            .get("/loops/V-1/survey/judged?probe=P-1&path-1=C-1&driver=D-1", "HX-Request", "true")
            .page();
    assertThat(judged.select("h2 .verdict").text()).isEqualTo("attention");
    assertThat(judged.select("svg")).hasSize(1);
    Document wrong = technician.get("/loops/V-1/assembly/judged?probe=nobody").page();
    assertThat(wrong.select(".complaint").text())
        .contains("No part in the register is called nobody");
    Document choices = technician.get("/choices?slot=path-1&path-1=c").page();
    assertThat(choices.select("datalist#path-1-choices option").eachAttr("value"))
        .containsExactly("C-1");
    assertThat(technician.get("/choices?slot=path-1&path-1=zzz").page().select("option")).isEmpty();
    assertThat(technician.get("/choices").status()).isEqualTo(404);
    assertThat(technician.get("/choices?slot=lid").status()).isEqualTo(404);
  }

  @Test
  void whoOnlyLooksChangesNothing() {
    Visitor viewer = shop.app.as("viewer");
    assertThat(viewer.get("/loops/V-1").page().select("main .acts a").eachText())
        .as("it may look back, not change")
        .containsOnly("Compare two moments");
    for (String way : List.of("survey", "assembly")) {
      assertThat(viewer.get("/loops/V-1/" + way).status()).isEqualTo(403);
      assertThat(viewer.get("/loops/V-1/" + way + "/judged").status()).isEqualTo(403);
      assertThat(viewer.post("/loops/V-1/" + way, "reason", "x").status()).isEqualTo(403);
      assertThat(technician.get("/loops/NOT-THERE/" + way).status()).isEqualTo(404);
      assertThat(technician.post("/loops/NOT-THERE/" + way, "reason", "x").status()).isEqualTo(404);
    }
    assertThat(viewer.get("/choices?slot=probe").status()).isEqualTo(403);
    assertThat(rows(PLACEMENT)).isZero();
    for (String role : List.of("planner", "engineer", "administrator")) {
      assertThat(shop.app.as(role).get("/loops/V-1/survey").status()).as(role).isIn(200, 403);
    }
  }
}
