package loopwright.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import loopwright.print.QrReader;
import loopwright.sheet.XlsxReader;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Certificates and raw points over HTTP, and the way from the paper back to the record. */
class CertificatePagesTest {
  private static final String CURVE = "/loops/V-1/curve";
  private static Shop shop;
  private static Visitor technician;
  private static String found;
  private static String left;

  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-01-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
    found = kept("as found", "08:00", "-18,00");
    left = kept("as left", "10:00", "-18.02");
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static String kept(String stage, String time, String last) {
    String[] volts =
        IntStream.rangeClosed(1, 9)
            .mapToObj(i -> String.format(Locale.ROOT, "-%d.00", 2 * i))
            .toArray(String[]::new);
    volts[8] = last;
    Visitor.Answer answer =
        FilledForm.of(technician.get(CURVE).page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set(
                "gap",
                IntStream.rangeClosed(1, 9).mapToObj(i -> "" + 10 * i).toArray(String[]::new))
            .set("up", volts)
            .set("stage", stage)
            .set("on", "2026-02-20")
            .set("time", time)
            .set("reason", "outage")
            .send(technician, "do", "keep");
    assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
    return answer.location();
  }

  private static PDDocument pdf(String path) throws IOException {
    HttpResponse<byte[]> answer = technician.fetch(path);
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElse("")).contains("application/pdf");
    return Loader.loadPDF(answer.body());
  }

  @Test
  void aRecordIsPrintedAndItsCodeLeadsBack() throws IOException {
    Document page = technician.get(found).page();
    String link = page.select("a[href$=certificate.pdf]").attr("href");
    try (PDDocument pdf = pdf(link)) {
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("Calibration record, not signed", "V-1", "-18,00 V", "probe", "P-1")
          .contains("No uncertainty is stated: no voltmeter is named");
      BufferedImage image = new PDFRenderer(pdf).renderImageWithDPI(0, 150);
      String code = QrReader.read(image).orElseThrow();
      String hash = code.substring(code.indexOf("sha256:") + 7);
      assertThat(hash).hasSize(64);
      assertThat(technician.get(found + "?hash=" + hash).page().select(".notice").text())
          .contains("The paper and this record agree");
      assertThat(technician.get(left + "?hash=" + hash).page().select(".notice").text())
          .contains("The paper doesn't agree with this record");
    }
  }

  @Test
  void anAsLeftIsPrintedWithTheAsFoundBeforeItAndNothingElse() throws IOException {
    String link = technician.get(left).page().select("a[href*=pdf?with]").attr("href");
    assertThat(link).endsWith("certificate.pdf?with=" + found.substring(14));
    try (PDDocument pdf = pdf(link)) {
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("As found and as left", found.substring(14) + " and " + left.substring(14));
    }
    assertThat(technician.get(found).page().select("a[href*=with]")).isEmpty();
    Document print = technician.get(left + "/print?with=" + found.substring(14)).page();
    assertThat(print.select("h1").text()).contains("Calibration record, not signed");
    assertThat(print.select(".side svg.plot")).hasSize(2);
    assertThat(print.select("svg[id]").eachAttr("id")).doesNotHaveDuplicates();
    assertThat(technician.get(found + "/print?with=" + left.substring(14)).status()).isEqualTo(404);
    assertThat(technician.fetch(found + "/certificate.pdf?with=" + left.substring(14)).statusCode())
        .isEqualTo(404);
    assertThat(technician.fetch(left + "/certificate.pdf?with=C-999").statusCode()).isEqualTo(404);
    assertThat(technician.fetch("/calibrations/C-999/certificate.pdf").statusCode()).isEqualTo(404);
  }

  @Test
  void thePrintViewSaysWhatThePaperSays() throws IOException {
    Document print = technician.get(found + "/print").page();
    assertThat(print.select(".papercode svg path")).hasSize(1);
    assertThat(print.select("figure svg.plot")).hasSize(1);
    assertThat(print.select("th").eachText()).contains("ISF mV/µm", "ISF mV/mil", "µm", "mil");
    try (PDDocument pdf = pdf(found + "/certificate.pdf")) {
      String paper = new PDFTextStripper().getText(pdf).replaceAll("\\s", "");
      for (String cell : print.select(".paper td, .paper dd, .paper h2").eachText()) {
        assertThat(paper).contains(cell.replaceAll("\\s", ""));
      }
    }
  }

  @Test
  void pointsAndResultsComeAsAWorkbook() {
    List<XlsxReader.Row> rows =
        new XlsxReader(5).read("points.xlsx", technician.fetch(found + "/points.xlsx").body());
    assertThat(rows).hasSize(10);
    assertThat(rows.get(9).cell(3).text()).as("as typed").isEqualTo("-18,00");
    assertThat(Double.parseDouble(rows.get(9).cell(6).text())).isEqualTo(-18);
    assertThat(Double.parseDouble(rows.get(9).cell(7).text())).isCloseTo(200 / 25.4, offset(1e-12));
  }

  @Test
  void rawPointsAreTakenAlongAsTypedAndAsNumbers() {
    Visitor.Answer csv = technician.get(found + "/points.csv");
    assertThat(csv.header("Content-Type")).contains("text/csv");
    String number = found.substring(14);
    assertThat(csv.body().lines())
        .hasSize(10)
        .contains(number + ",up,10,mil,-2.00,V,254.0,-2.0,,0.0")
        .contains(number + ",up,90,mil,\"-18,00\",V,2286.0,-18.0,7.874015748031496,0.0");
  }
}
