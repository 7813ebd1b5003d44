package loopwright.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.people.People;
import loopwright.print.QrReader;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.testing.DemoSite;
import loopwright.testing.TestClock;
import loopwright.testing.Visitor;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Labels of the invented plant, from choosing to scanning. */
class LabelPagesTest {
  private static final String LOOP = "K101-V3X";

  private static DemoSite site;
  private static Visitor technician;

  @BeforeAll
  static void start() {
    site = DemoSite.toLookAt();
    technician = signedIn(site.address());
  }

  private static Visitor signedIn(java.net.URI address) {
    Visitor visitor = new Visitor(address);
    assertThat(visitor.signIn("technician", People.DEMO_PASSWORD).status()).isEqualTo(303);
    visitor.get("/password");
    return visitor;
  }

  private static Document page(String path) {
    Visitor.Answer answer = technician.get(path);
    assertThat(answer.status()).as(path).isEqualTo(200);
    return answer.page();
  }

  private static List<String> codes(Document page) {
    return page.select("input[name=label][checked]").eachAttr("value");
  }

  private static PDDocument printed(String... fields) throws IOException {
    HttpResponse<byte[]> answer = technician.download("/labels.pdf", fields);
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElse(""))
        .startsWith("application/pdf");
    return Loader.loadPDF(answer.body());
  }

  @Test
  void aLoopsLabelsArePrintedAndEachLeadsToItsPage() throws IOException {
    Document page = page("/labels?loop=" + LOOP);
    assertThat(codes(page)).hasSize(4);
    try (PDDocument document =
        printed(
            "paper",
            "single",
            "width",
            "62",
            "height",
            "29",
            "label",
            codes(page).get(0),
            "label",
            codes(page).get(2))) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
      assertThat(new PDFTextStripper().getText(document)).contains(LOOP, "4.5 m", "14.8 ft");
      assertThat(follow(document, 0)).isEqualTo("/loops/" + LOOP);
      assertThat(page(follow(document, 1)).text()).contains("extension cable", LOOP);
    }
  }

  /** Scans a page and goes where the code leads. */
  private static String follow(PDDocument document, int page) throws IOException {
    Optional<String> scanned =
        QrReader.read(new PDFRenderer(document).renderImageWithDPI(page, 203));
    assertThat(scanned.orElse("")).startsWith(site.address() + "c/");
    return technician.get(java.net.URI.create(scanned.orElseThrow()).getPath()).location();
  }

  @Test
  void labelsForWhatAFilterShowsAndForTheStock() {
    Element link =
        page("/parts?kind=extension+cable&state=in+stock").select("a[href^=/labels]").first();
    assertThat(link).isNotNull();
    Document chosen = page(link.attr("href"));
    assertThat(codes(chosen)).isNotEmpty();
    assertThat(chosen.select("td[data-label=What]").eachText())
        .allSatisfy(kind -> assertThat(kind).startsWith("extension cable"));
    assertThat(codes(page("/labels?state=in+stock")).size()).isGreaterThan(codes(chosen).size());
    assertThat(page("/labels").text()).contains("No part is chosen yet");
  }

  @Test
  void thePartsPageAndTheLoopsPageTellTheCode() {
    String code = codes(page("/labels?loop=" + LOOP)).get(1);
    String part = technician.get("/c/" + code).location();
    assertThat(page(part).select("section:has(> h2:contains(Label)) b").text()).isEqualTo(code);
    assertThat(page("/loops/" + LOOP).text()).contains(codes(page("/labels?loop=" + LOOP)).get(0));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1C00D11  | misread or mistyped
          1CYGJ0K  | holds no part of that number
          1P63A0M  | holds no loop of that number
          XC-1     | is not the code of a label
          """)
  void aCodeThatLeadsNowhereSaysWhy(String code, String why) {
    Visitor.Answer answer = technician.get("/c/" + code);
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.page().select(".complaints").text()).contains(why);
    assertThat(answer.page().select("input[name=q]").attr("value")).isEqualTo(code);
  }

  @Test
  void theSearchTakesCodesAndScannedAddresses() {
    String code = codes(page("/labels?loop=" + LOOP)).get(1);
    assertThat(technician.get("/find?q=" + code.toLowerCase(java.util.Locale.ROOT)).location())
        .startsWith("/c/");
    String own = java.net.URLEncoder.encode(site.address() + "c/" + code, StandardCharsets.UTF_8);
    assertThat(technician.get("/find?q=" + own).location()).isEqualTo("/c/" + code);
    Visitor.Answer foreign = technician.get("/find?q=https%3A%2F%2Fother.example%2Fc%2F" + code);
    assertThat(foreign.status()).isEqualTo(422);
    assertThat(foreign.page().text()).contains("another register, at https://other.example");
  }

  @ParameterizedTest(name = "{0}={1}")
  @CsvSource(
      textBlock =
          """
          columns, 0,    1 to 8
          columns, drei, whole number
          start,   25,   1 to 24
          top,     140,  0 to 60
          side,    '',   a number of mm
          """)
  void paperThatCannotBeIsAskedBackAndNothingTypedIsLost(String field, String typed, String told) {
    List<String> codes = codes(page("/labels?loop=" + LOOP));
    String[] fields = {
      "paper",
      "sheet",
      "columns",
      "3",
      "rows",
      "8",
      "start",
      "1",
      "side",
      "0",
      "top",
      "0",
      "gap",
      "0",
      "width",
      "62",
      "height",
      "29",
      "shown",
      codes.get(0),
      "shown",
      codes.get(1),
      "label",
      codes.get(1)
    };
    for (int i = 0; i < fields.length; i += 2) {
      fields[i + 1] = fields[i].equals(field) ? typed : fields[i + 1];
    }
    Visitor.Answer answer = technician.post("/labels.pdf", fields);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaints").text()).contains(told);
    assertThat(answer.page().select("input[name=" + field + "]").attr("value")).isEqualTo(typed);
    assertThat(codes(answer.page())).containsExactly(codes.get(1));
    assertThat(answer.page().select("input[name=label]")).hasSize(2);
  }

  @Test
  void nothingTickedIsSaid() {
    page("/labels?loop=" + LOOP);
    Visitor.Answer answer =
        technician.post("/labels.pdf", "paper", "single", "width", "62", "height", "29");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().text()).contains("Tick at least one");
  }

  @Test
  void withoutABaseAddressNothingIsPrintedAndThePageSaysWhatToDo() {
    try (App app =
        App.open(
            new Place.Memory("labels-without-base"),
            Installation.Purpose.DEMO,
            new TestClock(DemoSite.NOW))) {
      app.people().createDemoAccounts();
      try (Web web = app.serve(WebSettings.loopback(0), "")) {
        Visitor visitor = signedIn(web.address());
        assertThat(visitor.get("/labels").page().select(".complaints").text())
            .contains("--base-address");
        Visitor.Answer answer =
            visitor.post(
                "/labels.pdf",
                "paper",
                "single",
                "width",
                "62",
                "height",
                "29",
                "label",
                LabelCode.ofComponent(1).text());
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.page().select(".complaints").text()).contains("--base-address");
      }
    }
  }

  @Test
  void aCodeIsThePartsForEverWhateverHappensToIt() {
    List<Component> cables =
        site.app()
            .database()
            .read(sql -> new Register((tx, id) -> {}).labelled(sql, cableOf(LOOP)));
    assertThat(LabelCode.ofComponent(cables.get(0).id().number()).text())
        .isEqualTo(codes(page("/labels?loop=" + LOOP)).get(2));
  }

  private static String cableOf(String loop) {
    return page("/loops/" + loop).select("td[data-label=Part] a").get(1).text();
  }
}
