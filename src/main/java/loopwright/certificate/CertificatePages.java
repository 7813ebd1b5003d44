package loopwright.certificate;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Evidence;
import loopwright.calibration.RecordPanel;
import loopwright.db.Database;
import loopwright.print.QrCode;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Certificates to print, raw points to take along, and the links to them on a record's page. */
public final class CertificatePages implements Pages, RecordPanel {
  private final Database database;
  private final Page page;
  private final CertificateBook book;
  private final InstantSource clock;

  public CertificatePages(Database database, Page page, CertificateBook book, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.book = book;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/calibrations/{number}/print", Permission.READ, this::print);
    routes.get("/calibrations/{number}/certificate.pdf", Permission.READ, this::pdf);
    routes.get("/calibrations/{number}/points.csv", Permission.READ, this::points);
    routes.get("/calibrations/{number}/points.xlsx", Permission.READ, this::workbook);
  }

  private void points(Context http) {
    Evidence evidence = database.read(sql -> book.evidence(sql, http.pathParam("number")));
    send(
        http,
        "text/csv; charset=utf-8",
        evidence.record().number() + ".csv",
        PointsFile.csv(evidence).getBytes(StandardCharsets.UTF_8));
  }

  private void workbook(Context http) {
    Evidence evidence = database.read(sql -> book.evidence(sql, http.pathParam("number")));
    send(
        http,
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        evidence.record().number() + ".xlsx",
        PointsWorkbook.xlsx(evidence));
  }

  private static void send(Context http, String type, String name, byte[] bytes) {
    http.contentType(type)
        .header("Content-Disposition", "inline; filename=\"" + name + "\"")
        .result(bytes);
  }

  private void pdf(Context http) {
    Report report = database.read(sql -> book.report(sql, http));
    send(
        http,
        "application/pdf",
        http.pathParam("number") + ".pdf",
        CertificateDocument.pdf(report, clock.instant()));
  }

  /** A section with the word that says how the page shows it. */
  record Shown(String kind, Report.Section section) {
    static Shown of(Report.Section section) {
      return new Shown(
          section instanceof Report.Heading
              ? "heading"
              : section instanceof Report.Words
                  ? "words"
                  : section instanceof Report.Facts
                      ? "facts"
                      : section instanceof Report.Table
                          ? "table"
                          : section instanceof Report.Picture ? "picture" : "pictures",
          section);
    }
  }

  private void print(Context http) {
    Report report = database.read(sql -> book.report(sql, http));
    String record = "/calibrations/" + http.pathParam("number");
    String with = http.queryParam("with");
    page.show(
        http,
        "certificate/print",
        Map.of(
            "report",
            report,
            "sections",
            report.sections().stream().map(Shown::of).toList(),
            "codeSvg",
            QrCode.of(report.address()).svg("Address and SHA-256 of the record"),
            "record",
            record,
            "pdf",
            record + "/certificate.pdf" + (with == null ? "" : "?with=" + with)));
  }

  /** Addresses on a record's page; a pair's are null where there is none. */
  record Panel(
      String pdf,
      String print,
      String csv,
      String xlsx,
      @Nullable String pair,
      @Nullable String pairPrint,
      @Nullable String partner) {}

  @Override
  public String template() {
    return "certificate/panel";
  }

  @Override
  public Optional<Object> model(DSLContext sql, Calibrated c, Reader reader) {
    String here = "/calibrations/" + c.number();
    Optional<String> partner = book.partnerOf(sql, c).map(Calibrated::number);
    return Optional.of(
        new Panel(
            here + "/certificate.pdf",
            here + "/print",
            here + "/points.csv",
            here + "/points.xlsx",
            partner.map(number -> here + "/certificate.pdf?with=" + number).orElse(null),
            partner.map(number -> here + "/print?with=" + number).orElse(null),
            partner.orElse(null)));
  }
}
