package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.testing.RawWorld;
import loopwright.testing.RunningApp;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Parts over HTTP: lists, the page of a part, every form and what can be typed wrong in it. */
@Tag("zone")
class PartPagesTest {
  private static final Instant FROM = Instant.parse("2026-01-10T05:00:00Z");

  private final Register register = new Register(FactsWatch.NOBODY);
  private RunningApp app;
  private Visitor technician;

  @BeforeEach
  void start() {
    app = new RunningApp();
    app.write(
        tx -> {
          FamilyDetails q8 =
              FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
                  .build();
          new FamilyBook().add(tx, q8);
          return RawWorld.point(tx, RawWorld.machine(tx, "K-301"), "K301/VX 1");
        });
    technician = app.as("technician");
  }

  @AfterEach
  void stop() {
    app.close();
  }

  private ComponentId part(String serial, String metres) {
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withLength(NominalLength.read(metres, Unit.METRE, Evidence.READ_ON_PART))
            .withShelf(new Shelf("Store 2", "14"));
    ComponentDetails details =
        ComponentDetails.of(PartKind.CABLE, new PartIdentity("Nordling", "X9", serial, ""));
    return app.write(tx -> register.add(tx, new NewComponent(details, facts, FROM)));
  }

  private void fit(ComponentId part) {
    app.write(
        tx -> {
          FittedWorld.fit(tx, 1, "path-1", part, "2026-02-01T05:00:00Z");
          register.refreshState(tx, part);
          return true;
        });
  }

  private Component recorded(ComponentId id) {
    return app.database().read(sql -> register.component(sql, id)).orElseThrow();
  }

  private List<Belief> beliefs(ComponentId id) {
    return app.database().read(sql -> register.beliefs(sql, id));
  }

  private static Map<String, String> cable(String serial) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("kind", "extension cable");
    fields.put("maker", "Nordling");
    fields.put("model", "X9");
    fields.put("serial", serial);
    fields.put("channels", "1");
    fields.put("family", "Q8");
    fields.put("length", "13,10");
    fields.put("length-unit", "ft");
    fields.put("evidence", "certificate");
    fields.put("physical-unit", "m");
    fields.put("scale-unit", "mV/mil");
    fields.put("store", "Store 2");
    fields.put("bin", "14");
    fields.put("from", "2026-02-01");
    fields.put("reason", "delivery note");
    return fields;
  }

  private Visitor.Answer post(String path, Map<String, String> fields) {
    List<String> flat = new ArrayList<>();
    fields.forEach((name, value) -> flat.addAll(List.of(name, value)));
    return technician.post(path, flat.toArray(String[]::new));
  }

  private int parts() {
    return app.database()
        .read(sql -> new PartSearch().page(sql, ComponentQuery.EVERYTHING, null))
        .rows()
        .size();
  }

  @Test
  void anEmptyRegisterSaysWhatToDo() {
    Document page = technician.get("/parts").page();
    assertThat(page.select(".empty").text()).contains("No part is registered yet");
    assertThat(page.select("a[href=/parts/new]")).hasSize(1);
    assertThat(app.as("viewer").get("/parts").page().select("a[href=/parts/new]")).isEmpty();
  }

  @Test
  void aFilterStandsInTheAddressAndInThePager() {
    for (int i = 0; i < 60; i++) {
      part("C-%03d".formatted(i), i % 2 == 0 ? "4.0" : "4.5");
    }
    Document all = technician.get("/parts?kind=extension+cable&state=in+stock").page();
    assertThat(all.select("tbody tr")).hasSize(50);
    assertThat(all.select("tbody tr").first().text())
        .isEqualTo(
            "C-000 extension cable Nordling X9 4.0 m 13.1 ft read on part in stock Store 2, 14");
    assertThat(all.select("select[name=kind] option[selected]").attr("value"))
        .isEqualTo("extension cable");
    assertThat(all.select(".pager .why").text()).isEqualTo("C-000 to C-049");
    String next = all.select("a[rel=next]").attr("href");
    assertThat(next).contains("kind=extension+cable").contains("state=in+stock");
    Document second = technician.get(next).page();
    assertThat(second.select("tbody tr")).hasSize(10);
    assertThat(second.select("a[rel=next]")).isEmpty();
    Document back = technician.get(second.select("a[rel=prev]").attr("href")).page();
    assertThat(back.select(".pager .why").text()).isEqualTo("C-000 to C-049");
    assertThat(back.select("a[rel=prev]")).isEmpty();
    Document feet = technician.get("/parts?length=14.5&length-unit=ft").page();
    assertThat(feet.select(".empty").text()).contains("No part in the register is like that");
    assertThat(technician.get("/parts?length=14.76378&length-unit=ft").page().select("tbody tr"))
        .as("4.5 m asked for in feet")
        .hasSize(30);
    assertThat(technician.get("/parts?length=4,5&length-unit=m").page().select("tbody tr"))
        .hasSize(30);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          length=400,            length,  can't be
          length=four,           length,  is not a number
          kind=gearbox,          kind,    is not a kind of part
          state=lost,            state,   is not a state
          family=Z9,             family,  There is no family Z9
          after=nonsense,        after,   can't be read
          """)
  void aFilterThatCantBeIsSaid(String query, String field, String said) {
    Visitor.Answer answer = technician.get("/parts?" + query);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints, .complaint").text())
        .contains(field.equals("after") ? "another look" : said);
  }

  @Test
  void aPartIsRegisteredAndShownAsTyped() {
    Visitor.Answer asked = technician.get("/parts/new");
    assertThat(asked.page().select("input[name=from]").attr("value")).isEqualTo("2026-03-01");
    Visitor.Answer stored = post("/parts/new", cable("00417"));
    assertThat(stored.status()).isEqualTo(303);
    Document page = technician.get(stored.location()).page();
    assertThat(page.select("h1").text()).isEqualTo("00417 extension cable · Nordling X9");
    assertThat(page.select("main").text())
        .contains("13,10 ft (3.993 m), from its certificate")
        .contains("in stock")
        .contains("Store 2, 14")
        .contains("Demo Technician: delivery note")
        .contains("since 2026-02-01 00:00: Nominal length 13,10 ft");
    assertThat(page.select("#notice").text()).contains("00417 is registered");
    Component part = recorded(new ComponentId(1));
    assertThat(part.facts().family()).isNotNull();
    assertThat(beliefs(part.id()).get(0).span().from())
        .as("a bare day begins when it begins at the site")
        .isEqualTo(Instant.parse("2026-01-31T23:00:00Z"));
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource(
      textBlock =
          """
          # field,       typed,          complaint
          kind,          '',             is not a kind of part
          kind,          gearbox,        is not a kind of part
          maker,         '',             Fill this in
          model,         ' ',            Fill this in
          serial,        '',             Give the serial as stamped
          family,        Z9,             There is no family Z9
          length,        0,              A length of 0 ft can't be
          length,        -4,             A length of -4 ft can't be
          length,        400,            at most 60 m (196.9 ft)
          length,        4 m,            is not a number
          length,        '4.000,0',      is not a number
          length,        '',             Give the length that is known so
          length-unit,   mil,            Choose the unit
          evidence,      '',             Say how the length is known
          evidence,      hearsay,        is not a way of knowing
          physical,      0,              A length of 0 m can't be
          physical,      101,            at most 100 m
          tip,           thin,           is not a number
          tip,           200,            A tip diameter can't be 200 mm
          scale,         -200,           positive
          scale,         200.1234567,    at most 6 decimals
          scale-unit,    V,              ''
          channels,      17,             1 to 16
          channels,      1.5,            1 to 16
          due,           31/05/2027,     is not a day
          from,          2026-03-02,     still to come
          from,          '',             is not a day
          reason,        ' ',            Say why
          """)
  void whatCantBeIsSaidAtItsFieldAndNothingIsLost(String field, String typed, String said) {
    Map<String, String> fields = cable("C-1");
    fields.put(field, typed);
    Visitor.Answer answer = post("/parts/new", fields);
    if (field.equals("scale-unit")) {
      assertThat(answer.status()).as("no scale factor, so its unit is nobody's").isEqualTo(303);
      return;
    }
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint, .complaints").text()).contains(said);
    assertThat(parts()).isZero();
    Document page = answer.page();
    fields.forEach(
        (name, value) -> {
          if (!page.select("input[name=" + name + "]").isEmpty()) {
            assertThat(page.select("input[name=" + name + "]").attr("value"))
                .as(name)
                .isEqualTo(value);
          }
        });
    if (!field.equals("evidence")) {
      assertThat(page.select("select[name=evidence] option[selected]").attr("value"))
          .isEqualTo("certificate");
    }
  }

  @Test
  void twoMistakesAreToldAtOnce() {
    Map<String, String> fields = cable("");
    fields.put("maker", "");
    fields.put("length", "400");
    Document page = post("/parts/new", fields).page();
    assertThat(page.select(".complaint"))
        .hasSize(3)
        .extracting(complaint -> complaint.parent().id())
        .containsExactlyInAnyOrder("maker-about", "serial-about", "length-about");
  }

  @Test
  void aSecondPartOfThatSerialIsRefusedByName() {
    part("C-1", "4.0");
    Visitor.Answer answer = post("/parts/new", cable("c-1"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select("#serial-about .complaint").text())
        .contains("stands for extension cable C-1 (in stock) already")
        .contains("R-101");
    assertThat(parts()).isEqualTo(1);
  }

  @Test
  void viewersOnlyLook() {
    ComponentId id = part("C-1", "4.0");
    Visitor viewer = app.as("viewer");
    assertThat(viewer.get("/parts/" + id.number()).page().select("main .acts a")).isEmpty();
    for (String path : List.of("new", "1/facts", "1/details", "1/quarantine", "1/scrap")) {
      assertThat(viewer.get("/parts/" + path).status()).as(path).isEqualTo(403);
    }
    assertThat(viewer.post("/parts/1/scrap", "reason", "x", "version", "1").status())
        .isEqualTo(403);
  }

  @Test
  void whatIsNoPartIsNotFound() {
    assertThat(technician.get("/parts/77").status()).isEqualTo(404);
    assertThat(technician.get("/parts/x").status()).isEqualTo(404);
    assertThat(technician.get("/parts/77/facts").status()).isEqualTo(404);
  }

  private Map<String, String> opened(String path) {
    Document page = technician.get(path).page();
    Map<String, String> fields = new LinkedHashMap<>();
    page.select("main form input[name], main form textarea[name]")
        .forEach(input -> fields.put(input.attr("name"), input.val()));
    page.select("main form select[name]")
        .forEach(
            select -> {
              String chosen = select.select("option[selected]").attr("value");
              String first = select.select("option").first().attr("value");
              fields.put(
                  select.attr("name"),
                  select.select("option[selected]").isEmpty() ? first : chosen);
            });
    fields.remove("csrf");
    return fields;
  }

  @Test
  void aFactIsChangedSinceADay() {
    ComponentId id = part("C-1", "4,00");
    Map<String, String> fields = opened("/parts/1/facts");
    assertThat(fields).containsEntry("length", "4,00").containsEntry("evidence", "read on part");
    fields.put("length", "3.8");
    fields.put("evidence", "measured");
    fields.put("from", "2026-02-20");
    fields.put("reason", "re-terminated");
    assertThat(post("/parts/1/facts", fields).location()).isEqualTo("/parts/1");
    assertThat(beliefs(id)).hasSize(2);
    String said = technician.get("/parts/1").page().select(".story li").first().text();
    assertThat(said)
        .contains("re-terminated")
        .contains(
            "since 2026-02-20 00:00: Nominal length 4,00 m (13.1 ft), read on part → 3.8 m (12.5 ft),"
                + " measured")
        .doesNotContain("Condition");
  }

  @Test
  void aWrongRecordIsCorrectedFromItsBeginning() {
    ComponentId id = part("C-1", "4.0");
    Map<String, String> fields = opened("/parts/1/facts");
    fields.put("length", "4.5");
    fields.put("when", "always");
    fields.put("reason", "misread");
    assertThat(post("/parts/1/facts", fields).status()).isEqualTo(303);
    assertThat(beliefs(id))
        .singleElement()
        .satisfies(belief -> assertThat(belief.span().from()).isEqualTo(FROM));
  }

  @Test
  void nothingNewIsSaidToBeSo() {
    part("C-1", "4.0");
    Map<String, String> fields = opened("/parts/1/facts");
    fields.put("reason", "no idea");
    fields.put("from", "2026-02-20");
    Visitor.Answer answer = post("/parts/1/facts", fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains("C-1 is recorded so already");
  }

  @ParameterizedTest
  @CsvSource({"facts", "details", "quarantine"})
  void whoEditsWhatMovedOnIsToldAndLosesNothing(String path) {
    ComponentId id = part("C-1", "4.0");
    Map<String, String> fields = opened("/parts/1/" + path);
    app.write(
        tx -> {
          register.quarantine(tx, id, "wet");
          return true;
        });
    fields.put("reason", "mine");
    fields.put("store", "Store 9");
    Visitor.Answer answer = post("/parts/1/" + path, fields);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.page().select(".complaints").text())
        .contains("Somebody else changed this")
        .contains("command line on 2026-03-01 11:15: a world to look at");
    assertThat(answer.page().select("[name=reason]").val()).isEqualTo("mine");
    assertThat(recorded(id).version()).isEqualTo(2);
    if (path.equals("facts")) {
      assertThat(answer.page().select("main .sheet .facts").text()).contains("quarantined: wet");
      assertThat(answer.page().select("input[name=store]").val()).isEqualTo("Store 9");
      fields.put("version", answer.page().select("input[name=version]").val());
      fields.put("from", "2026-02-20");
      assertThat(post("/parts/1/facts", fields).status()).isEqualTo(303);
      assertThat(recorded(id).facts().condition()).isEqualTo(Condition.QUARANTINED);
    }
  }

  @Test
  void nameAndDetailsAreCorrected() {
    part("C-1", "4.0");
    part("C-2", "4.0");
    Map<String, String> fields = opened("/parts/1/details");
    fields.put("serial", "C-2");
    fields.put("reason", "read again");
    Visitor.Answer refused = post("/parts/1/details", fields);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select("#serial-about").text()).contains("C-2");
    fields.put("serial", "C-1A");
    fields.put("due", "2027-05-31");
    assertThat(post("/parts/1/details", fields).status()).isEqualTo(303);
    assertThat(technician.get("/parts/1").page().select("main").text())
        .contains("C-1A")
        .contains("2027-05-31");
  }

  @Test
  void aPartIsQuarantinedReturnedAndScrappedWithReasons() {
    ComponentId id = part("C-1", "4.0");
    Map<String, String> fields = opened("/parts/1/quarantine");
    assertThat(post("/parts/1/quarantine", fields).page().select("#reason-about").text())
        .contains("Say why");
    fields.put("reason", "wet connector");
    assertThat(post("/parts/1/quarantine", fields).status()).isEqualTo(303);
    Document page = technician.get("/parts/1").page();
    assertThat(page.select(".verdict").text()).isEqualTo("quarantined");
    assertThat(page.select("main").text()).contains("wet connector");
    app.clock.forward(Duration.ofHours(1));
    Map<String, String> back = opened("/parts/1/stock");
    assertThat(back).containsEntry("store", "Store 2");
    back.put("store", "Store 1");
    back.put("reason", "dried");
    assertThat(post("/parts/1/stock", back).status()).isEqualTo(303);
    assertThat(recorded(id).facts().shelf().inWords()).isEqualTo("Store 1, 14");
    app.clock.forward(Duration.ofHours(1));
    Map<String, String> scrap = opened("/parts/1/scrap");
    scrap.put("reason", "cut through");
    assertThat(post("/parts/1/scrap", scrap).status()).isEqualTo(303);
    assertThat(technician.get("/parts/1").page().select("main .acts").text())
        .contains("Return to stock")
        .doesNotContain("Scrap");
  }

  @Test
  void aFittedPartShowsWhereAndIsNotScrapped() {
    ComponentId id = part("C-1", "4.0");
    fit(id);
    Document page = technician.get("/parts/1").page();
    assertThat(page.select("h1 + p a").attr("href")).isEqualTo("/loops/K301%2FVX%201");
    assertThat(technician.get("/loops/K301%2FVX%201").page().select("h1").text())
        .startsWith("K301/VX 1");
    assertThat(page.select("main table").first().text())
        .contains("K301/VX 1 K-301 path-1 2026-02-01 06:00 now survey");
    assertThat(page.select("main .acts a[href$=scrap]")).isEmpty();
    Map<String, String> fields = opened("/parts/1/scrap");
    fields.put("reason", "x");
    Visitor.Answer answer = post("/parts/1/scrap", fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text())
        .contains("C-1 is fitted at K301/VX 1 (path-1)");
    assertThat(technician.get("/parts").page().select("tbody a[href^=/loops]").text())
        .isEqualTo("K301/VX 1");
  }
}
