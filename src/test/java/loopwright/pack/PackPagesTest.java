package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import loopwright.matching.PartKind;
import loopwright.sheet.XlsxReader;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.standard.StandardKind;
import loopwright.standard.Standards;
import loopwright.testing.FilledForm;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Packs over HTTP: issued, changed since, and their files. */
class PackPagesTest {
  private PackWorld world;

  @BeforeEach
  void start() {
    world = new PackWorld();
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Document pack() {
    return world.technician.get(world.outage + "/pack").page();
  }

  @Test
  void issuingFreezesAndWhatChangesAfterwardsIsTold() {
    world.issue("first");
    assertThat(pack().select("h2").eachText()).doesNotContain("Changed since issue");
    assertThat(world.technician.get(world.outage).page().text())
        .contains("Revision 1, issued 2026-03-01", "Issued Demo Planner, 2026-03-01 11:15: first");
    assertThat(world.planner.post(world.outage + "/pack", "note", "again").body())
        .as("nothing changed")
        .contains("B-102");
    world.shop.part(PartKind.CABLE, "C-45", "4.5");
    assertThat(world.shop.survey("V-1", "2026-03-01", "P-1", "C-45", "D-1").status())
        .isEqualTo(303);
    assertThat(pack().select("h2:contains(Changed) + div tr:contains(V-1)").text())
        .contains("parts", "length balance");
    assertThat(pack().select("h2:contains(Changed) + div tr:contains(V-2)")).isEmpty();
    String before = new String(world.file("1.csv"), StandardCharsets.UTF_8);
    assertThat(before).as("as issued").contains("C-1").doesNotContain("C-45");
    world.issue("cable exchanged");
    assertThat(new String(world.file("2.csv"), StandardCharsets.UTF_8)).contains("C-45");
    assertThat(new String(world.file("1.csv"), StandardCharsets.UTF_8)).isEqualTo(before);
    assertThat(world.technician.get(world.outage + "/pack/3.pdf").status()).isEqualTo(404);
  }

  @Test
  void everyKindOfFileCarriesTheSameIdentity() throws IOException {
    world.issue("first");
    String identity = pack().select("td[data-label=Identity]").text();
    assertThat(identity).matches("WP-[0-9a-f]{8}-O\\d+-R1-[0-9a-f]{8}");
    assertThat(new String(world.file("1.csv"), StandardCharsets.UTF_8).lines().skip(1))
        .allMatch(line -> line.startsWith(identity));
    List<XlsxReader.Row> rows = new XlsxReader(5).read("1.xlsx", world.file("1.xlsx"));
    assertThat(rows.subList(1, rows.size())).allMatch(row -> row.cell(0).text().equals(identity));
    try (PDDocument pdf = Loader.loadPDF(world.file("1.pdf"))) {
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text)
          .contains(
              identity, "V-1", "C-1", "250", "2250", "7.480 to 8.268 mV/µm", "1.870 to 2.067 V");
      assertThat(text.split("no permission to work", -1).length - 1)
          .as("cautions on the first page and on every sheet")
          .isEqualTo(4);
    }
  }

  /**
   * By hand, for readings of -2.1 V at 250 µm that fall by 7.874 mV/µm: at 1000 µm the line stands
   * at -2.1 - 0.75 · 7.874 = -8.0055 V; the corridor is 25.4 µm · 7.874 mV/µm = 0.200 V to each
   * side; a step of 250 µm at 190 and 210 mV/mil is 1.870 and 2.067 V (limits after API Std 670,
   * common practice).
   */
  @Test
  void expectedVoltagesAndTheirLimitsAreThoseOfTheLastCurve() {
    world.issue("first");
    world.bringBackDone("V-1");
    world.issue("with the curve");
    String csv = new String(world.file("2.csv"), StandardCharsets.UTF_8);
    assertThat(csv.lines().filter(line -> line.contains("V-1,reading,1000 µm")).findFirst())
        .hasValueSatisfying(line -> assertThat(line).contains(",V,-8.01,-8.21,-7.81,"));
    assertThat(csv.lines().filter(line -> line.contains("V-1,reading,250 µm")).findFirst())
        .hasValueSatisfying(line -> assertThat(line).contains(",V,-2.10,-2.30,-1.90,"));
  }

  @Test
  void howAProbeIsReachedHoursAndStandardsStandOnThePack() throws IOException {
    world.shop.app.write(
        tx -> {
          Standards standards = new Standards();
          standards.add(
              tx,
              new Standard(
                  0,
                  "TORQUE-1",
                  StandardKind.OTHER,
                  "Nordling",
                  "T2",
                  "7",
                  "",
                  List.of(),
                  List.of()));
          return standards.add(
              tx,
              standards.coded(tx.sql(), "TORQUE-1"),
              new Certificate(
                  0,
                  "K-1",
                  "Lab",
                  LocalDate.parse("2025-03-10"),
                  LocalDate.parse("2026-03-10"),
                  BigDecimal.valueOf(2),
                  List.of(),
                  ""),
              LocalDate.parse("2026-03-01"));
        });
    Document form = world.technician.get("/loops/V-1/mounting").page();
    FilledForm filled =
        FilledForm.of(form, "main form[method=post]")
            .set("access", "upper bearing cover off")
            .set("torque", "34 N·m")
            .set("reason", "drawing 7");
    assertThat(filled.set("hours", "two").send(world.technician, "do", "record").page().text())
        .contains("'two' is no number of hours");
    assertThat(filled.set("hours", "-1").send(world.technician, "do", "record").page().text())
        .contains("-1 h is no time for the work on one loop");
    assertThat(filled.set("hours", "2.5").send(world.technician, "do", "record").status())
        .isEqualTo(303);
    assertThat(filled.set("hours", "9").send(world.technician, "do", "record").status())
        .as("from a page of before")
        .isEqualTo(409);
    assertThat(world.technician.get("/loops/V-1").page().text())
        .contains("Mounting and access", "upper bearing cover off", "34 N·m");
    world.issue("first");
    assertThat(pack().text())
        .contains(
            "2.5 h; not reckoned for 2 loops", "due 2026-03-10. NOT valid through 2026-03-12");
    try (PDDocument pdf = Loader.loadPDF(world.file("1.pdf"))) {
      assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
          .contains(
              "Access: upper bearing cover off; Torque: 34 N·m; Hours: 2.5",
              "NOT valid through 2026-03-12",
              "2.5 h; not reckoned for 2 loops");
    }
  }

  @Test
  void onlyAPlannerIssuesAndSomethingMustBeTaken() {
    assertThat(world.technician.post(world.outage + "/pack", "note", "x").status()).isEqualTo(403);
    assertThat(world.planner.post(world.outage + "/pack", "note", " ").body())
        .contains("Give a note");
    String empty = world.plan("Autumn");
    assertThat(world.planner.post(empty + "/pack", "note", "x").body()).contains("B-101");
  }

  @Test
  void aSheetThatWillLackSomethingIsNamedBeforeItIsPrinted() {
    assertThat(pack().select("h2:contains(lack) + div tr:contains(V-3)").text())
        .contains("no tolerance profile");
  }
}
