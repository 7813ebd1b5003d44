package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import loopwright.matching.CableUse;
import loopwright.matching.PartKind;
import loopwright.testing.RawWorld;
import loopwright.testing.RunningApp;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Families, profiles and the find box over HTTP. */
class ReadablePagesTest {
  private static RunningApp app;
  private static Visitor viewer;

  @BeforeAll
  static void start() {
    app = new RunningApp();
    viewer = app.as("viewer");
    assertThat(viewer.get("/families").page().select(".empty").text())
        .contains("No family is registered yet");
    Register register = new Register(FactsWatch.NOBODY);
    FamilyBook book = new FamilyBook();
    app.write(
        tx -> {
          FamilyId q8 = book.add(tx, q8());
          FamilyDetails n8 =
              FamilyDetails.of(
                      "N/8", "other", "Sundqvard", ScaleFactor.millivoltsPerMicrometre("8"))
                  .cableUse(CableUse.NONE)
                  .lengths(
                      List.of(
                          OfferedLength.read(PartKind.PROBE, "5", Unit.METRE),
                          OfferedLength.read(PartKind.DRIVER, "5", Unit.METRE)))
                  .build();
          book.pair(tx, q8, book.add(tx, n8), "E. Ngineer");
          long machine = RawWorld.machine(tx, "K-301");
          RawWorld.point(tx, machine, "K301/VX 1");
          RawWorld.point(tx, machine, "BOTH");
          for (String serial : List.of("PB-00417", "PB-00418", "BOTH", "TWICE")) {
            add(tx, register, "Nordling", serial);
          }
          add(tx, register, "Sundqvard", "TWICE");
          return true;
        });
  }

  private static void add(loopwright.db.Tx tx, Register register, String maker, String serial) {
    ComponentDetails details =
        ComponentDetails.of(PartKind.PROBE, new PartIdentity(maker, "P1", serial, ""));
    Instant from = Instant.parse("2026-01-01T00:00:00Z");
    register.add(tx, new NewComponent(details, ComponentFacts.NOTHING_KNOWN, from));
  }

  private static FamilyDetails q8() {
    return FamilyDetails.of("Q8", "8 mm, 5 m", "Nordling", ScaleFactor.millivoltsPerMil("200"))
        .range(new LinearRange(250.0, 2250.0))
        .startVolts(new BigDecimal("-1.5"))
        .tipMillimetres(new BigDecimal("8"))
        .cableUse(CableUse.OPTIONAL)
        .profile("api670-2mm")
        .lengths(
            List.of(
                OfferedLength.read(PartKind.PROBE, "0.5", Unit.METRE),
                OfferedLength.read(PartKind.PROBE, "1", Unit.METRE),
                OfferedLength.read(PartKind.PROBE, "5", Unit.METRE),
                OfferedLength.read(PartKind.CABLE, "4", Unit.METRE),
                OfferedLength.read(PartKind.CABLE, "4.5", Unit.METRE),
                OfferedLength.read(PartKind.CABLE, "3", Unit.METRE),
                OfferedLength.read(PartKind.DRIVER, "5", Unit.METRE),
                OfferedLength.read(PartKind.DRIVER, "9", Unit.METRE)))
        .build();
  }

  @AfterAll
  static void stop() {
    app.close();
  }

  @Test
  void familiesAreListed() {
    Document page = viewer.get("/families").page();
    assertThat(page.select("tbody tr").text())
        .contains("Q8 8 mm, 5 m Nordling 200 mV/mil (7.874 mV/µm) 8 mm 0.5 m, 1 m, 5 m");
  }

  /** 0.5 + 4.5, 1 + 4 and 5 alone make 5 m (lengths of the trade: common practice, no source). */
  @Test
  void aFamilySaysWhatAddsUpToWhat() {
    Document page = viewer.get("/families/q8").page();
    assertThat(page.select("tbody tr").eachText())
        .containsExactly(
            "5 m (16.4 ft) 0.5 m + 4.5 m 1 m + 4 m 5 m alone", "9 m (29.5 ft) 5 m + 4 m");
    assertThat(page.select("main").text())
        .contains("Adds up to no system length: extension cable 3 m.")
        .contains("250 to 2250 µm (9.8 to 88.6 mil)")
        .contains("−1.5 V")
        .contains("0.05 m (0.2 ft)")
        .contains("said by E. Ngineer");
    assertThat(page.select("a[href=/profiles/api670-2mm]")).hasSize(1);
    String other = page.select("main ul.plain a").attr("href");
    Document second = viewer.get(other).page();
    assertThat(second.select("h1").text()).isEqualTo("N/8 other");
    assertThat(second.select("main").text())
        .contains("none: the lead reaches the driver")
        .contains("5 m alone")
        .contains("8 mV/µm (203.20 mV/mil)");
    assertThat(viewer.get("/families/Z9").status()).isEqualTo(404);
  }

  /** Limits after API Std 670 as facts from memory: ±5 % of 200 mV/mil is 190 to 210 mV/mil. */
  @Test
  void profilesSayLimitsAndSources() {
    assertThat(viewer.get("/profiles").page().select("tbody tr").eachText())
        .anySatisfy(row -> assertThat(row).contains("api670-2mm").contains("±25.4 µm (1.00 mil)"));
    Document page = viewer.get("/profiles/api670-2mm").page();
    assertThat(page.select("main").text())
        .contains("7.480 to 8.268 mV/µm (190.0 to 210.0 mV/mil)")
        .contains("10 to 90 mil by 10")
        .contains("API Std 670")
        .contains("from memory")
        .contains("least largest deviation");
    assertThat(page.select("a[href=/families/Q8]")).hasSize(1);
    assertThat(viewer.get("/profiles/none").status()).isEqualTo(404);
  }

  @ParameterizedTest(name = "{0} leads to {1}")
  @CsvSource(
      textBlock =
          """
          k301/vx%201,                        /loops/K301%2FVX%201
          pb-00417,                           /parts/1
          https%3A%2F%2Fshop%2Fparts%2F2,     /parts/2
          /loops/K1,                          /loops/K1
          """)
  void anExactHitGoesStraightThere(String typed, String address) {
    assertThat(viewer.get("/find?q=" + typed).location()).isEqualTo(address);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          # typed, found
          0041,    'PB-00417,PB-00418'
          nordl,   'BOTH,PB-00417,PB-00418,TWICE'
          301,     K301/VX 1
          twice,   'TWICE,TWICE'
          both,    'BOTH,BOTH'
          %25,     ''
          """)
  void aPartOfItFindsPointsAndParts(String typed, String found) {
    Visitor.Answer answer = viewer.get("/find?q=" + typed);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(String.join(",", answer.page().select("tbody td:first-child a").eachText()))
        .isEqualTo(found);
  }

  @Test
  void nothingTypedAsksAndNothingFoundSaysSo() {
    assertThat(viewer.get("/find").page().select(".empty")).isEmpty();
    assertThat(viewer.get("/find?q=zzzz").page().select(".empty").text())
        .contains("No tag, serial, shop number, maker or model holds that");
    assertThat(viewer.get("/find?q=" + "x".repeat(3000)).status()).isEqualTo(200);
  }
}
