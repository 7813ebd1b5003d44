package loopwright.certificate;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import loopwright.print.PdfFace;
import loopwright.print.PdfPicture;
import loopwright.print.PdfText;
import loopwright.print.QrCode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Writes a report as PDF, A4 upright. Lengths are points. */
final class CertificateDocument {
  private static final double MARGIN = 42;
  private static final double WIDTH = PDRectangle.A4.getWidth() - 2 * MARGIN;
  private static final double FOOT = 40;
  private static final double BODY = 8.5;
  private static final double CELL = 7.4;
  private static final double LEADING = 1.32;
  private static final double QR = 82;
  private static final double NAMES = 96;
  private static final double PAD = 3;
  private static final double BETWEEN = 12;

  /** A drawing is made smaller down to this share rather than sent to the next page. */
  private static final double LEAST_PICTURE = 0.62;

  private final PDDocument document;
  private final PdfText text;
  private final Report report;
  private final List<PDPage> pages = new ArrayList<>();
  private PDPageContentStream out;
  private double y;

  private CertificateDocument(PDDocument document, Report report) throws IOException {
    this.document = document;
    this.text = new PdfText(document);
    this.report = report;
    this.out = begun();
  }

  /**
   * @param printed when, for the document's properties
   */
  static byte[] pdf(Report report, Instant printed) {
    try (PDDocument document = new PDDocument()) {
      CertificateDocument writer = new CertificateDocument(document, report);
      writer.head();
      for (Report.Section section : report.sections()) {
        writer.write(section);
      }
      writer.out.close();
      writer.feet();
      properties(document, report, printed);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
  }

  private static void properties(PDDocument document, Report report, Instant printed) {
    PDDocumentInformation about = document.getDocumentInformation();
    about.setTitle(report.title() + " " + report.number());
    about.setSubject(report.footer());
    about.setCreator("Loopwright");
    about.setCreationDate(GregorianCalendar.from(printed.atZone(ZoneOffset.UTC)));
  }

  private PDPageContentStream begun() throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    pages.add(page);
    y = PDRectangle.A4.getHeight() - MARGIN;
    return new PDPageContentStream(document, page);
  }

  /** Makes sure that so much fits on this page, else begins the next. */
  private void room(double height) throws IOException {
    if (y - height < MARGIN + FOOT) {
      out.close();
      out = begun();
    }
  }

  private void head() throws IOException {
    QrCode.of(report.address()).draw(out, MARGIN + WIDTH - QR, y - QR + 6, QR);
    double wide = WIDTH - QR - 14;
    y -= 18;
    for (String line : text.wrapped(PdfFace.SANS_BOLD, shown(report.title()), 19, wide)) {
      put(PdfFace.SANS_BOLD, MARGIN, 19, line);
      y -= 24;
    }
    put(PdfFace.MONO_BOLD, MARGIN, 13, report.number());
    y -= 18;
    for (String line : text.wrapped(PdfFace.SANS, shown(report.addressNote()), 7, wide)) {
      put(PdfFace.SANS, MARGIN, 7, line);
      y -= 9.5;
    }
    y = Math.min(y, PDRectangle.A4.getHeight() - MARGIN - QR - 2) - 4;
  }

  private void write(Report.Section section) throws IOException {
    if (section instanceof Report.Heading heading) {
      heading(heading.text());
    } else if (section instanceof Report.Words words) {
      words(words);
    } else if (section instanceof Report.Facts facts) {
      facts(facts);
    } else if (section instanceof Report.Table table) {
      table(table);
    } else if (section instanceof Report.Picture picture) {
      picture(picture);
    } else if (section instanceof Report.TwoPictures two) {
      pictures(two);
    }
  }

  /** Stays with what follows: some lines have to fit below it. */
  private void heading(String words) throws IOException {
    room(70);
    y -= 16;
    put(PdfFace.SANS_BOLD, MARGIN, 11, shown(words));
    y -= 5;
    rule(0.8f);
    y -= 4;
  }

  private void rule(float width) throws IOException {
    out.setStrokingColor(0.45f);
    out.setLineWidth(width);
    out.moveTo((float) MARGIN, (float) y);
    out.lineTo((float) (MARGIN + WIDTH), (float) y);
    out.stroke();
  }

  private void words(Report.Words words) throws IOException {
    for (String sentence : words.sentences()) {
      for (String line : text.wrapped(PdfFace.SANS, shown(sentence), BODY, WIDTH)) {
        room(BODY * LEADING);
        y -= BODY * LEADING;
        put(PdfFace.SANS, MARGIN, BODY, line);
      }
      y -= 2.5;
    }
  }

  private void facts(Report.Facts facts) throws IOException {
    for (Report.Fact fact : facts.facts()) {
      List<String> lines = new ArrayList<>();
      for (String paragraph : fact.text().split("\n")) {
        lines.addAll(text.wrapped(PdfFace.SANS, shown(paragraph), BODY, WIDTH - NAMES));
      }
      List<String> names = text.wrapped(PdfFace.SANS_BOLD, fact.name(), BODY, NAMES - 8);
      room(BODY * LEADING * Math.min(3, Math.max(lines.size(), names.size())));
      for (int i = 0; i < Math.max(lines.size(), names.size()); i++) {
        room(BODY * LEADING);
        y -= BODY * LEADING;
        if (i < names.size()) {
          put(PdfFace.SANS_BOLD, MARGIN, BODY, names.get(i));
        }
        if (i < lines.size()) {
          put(PdfFace.SANS, MARGIN + NAMES, BODY, lines.get(i));
        }
      }
      y -= 1.5;
    }
  }

  private void table(Report.Table table) throws IOException {
    double weights = table.columns().stream().mapToDouble(Report.Column::weight).sum();
    List<Double> widths =
        table.columns().stream().map(column -> column.weight() / weights * WIDTH).toList();
    List<String> titles = table.columns().stream().map(Report.Column::title).toList();
    room(4 * CELL * LEADING);
    row(table, widths, titles, PdfFace.SANS_BOLD);
    for (List<String> cells : table.rows()) {
      double height = lines(widths, cells, PdfFace.SANS) * CELL * LEADING + PAD;
      if (y - height < MARGIN + FOOT) {
        out.close();
        out = begun();
        row(table, widths, titles, PdfFace.SANS_BOLD);
      }
      row(table, widths, cells, PdfFace.SANS);
    }
    y -= 6;
  }

  private int lines(List<Double> widths, List<String> cells, PdfFace face) {
    int most = 1;
    for (int i = 0; i < cells.size(); i++) {
      most = Math.max(most, cell(cells.get(i), widths.get(i), face).size());
    }
    return most;
  }

  private List<String> cell(String words, double width, PdfFace face) {
    return text.wrapped(face, shown(words), CELL, width - 2 * PAD);
  }

  private void row(Report.Table table, List<Double> widths, List<String> cells, PdfFace face)
      throws IOException {
    int most = lines(widths, cells, face);
    double top = y;
    double x = MARGIN;
    for (int i = 0; i < cells.size(); i++) {
      y = top - PAD / 2;
      for (String line : cell(cells.get(i), widths.get(i), face)) {
        y -= CELL * LEADING;
        double indent =
            table.columns().get(i).figures()
                ? widths.get(i) - PAD - text.width(face, line, CELL)
                : PAD;
        put(face, x + indent, CELL, line);
      }
      x += widths.get(i);
    }
    y = top - most * CELL * LEADING - PAD;
    rule(0.3f);
  }

  private void picture(Report.Picture picture) throws IOException {
    double full = PdfPicture.height(picture.svg(), WIDTH);
    double left = y - MARGIN - FOOT - 16;
    boolean fitsSmaller = left < full && left > LEAST_PICTURE * full;
    double width = fitsSmaller ? WIDTH * left / full : WIDTH;
    double height = full * width / WIDTH;
    room(height + 8);
    y -= 8;
    PdfPicture.draw(text, out, picture.svg(), MARGIN + (WIDTH - width) / 2, y, width);
    y -= height + 4;
  }

  private void pictures(Report.TwoPictures two) throws IOException {
    double half = (WIDTH - BETWEEN) / 2;
    double height = PdfPicture.height(two.leftSvg(), half);
    room(height + 24);
    y -= 14;
    put(PdfFace.SANS_BOLD, MARGIN, BODY, two.leftName());
    put(PdfFace.SANS_BOLD, MARGIN + half + BETWEEN, BODY, two.rightName());
    y -= 6;
    PdfPicture.draw(text, out, two.leftSvg(), MARGIN, y, half);
    PdfPicture.draw(text, out, two.rightSvg(), MARGIN + half + BETWEEN, y, half);
    y -= height + 4;
  }

  private void feet() throws IOException {
    for (int i = 0; i < pages.size(); i++) {
      String foot = "page %s of %s".formatted(i + 1, pages.size());
      PDPageContentStream page =
          new PDPageContentStream(
              document, pages.get(i), PDPageContentStream.AppendMode.APPEND, true, true);
      try (page) {
        double at = MARGIN + WIDTH - text.width(PdfFace.SANS, foot, 7);
        page.setNonStrokingColor(0.25f);
        text.write(page, PdfFace.SANS, at, MARGIN - 4, 7, foot);
        double base = MARGIN - 4;
        double wide = WIDTH - 70;
        List<String> lines = text.wrapped(PdfFace.SANS, shown(report.footer()), 7, wide);
        for (int line = lines.size() - 1; line >= 0; line--) {
          text.write(page, PdfFace.SANS, MARGIN, base, 7, lines.get(line));
          base += 9;
        }
      }
    }
  }

  private void put(PdfFace face, double x, double size, String words) throws IOException {
    out.setNonStrokingColor(0.08f);
    text.write(out, face, x, y, size, words);
  }

  /** What the fonts have; a character that none has becomes a question mark. */
  private String shown(String words) {
    StringBuilder shown = new StringBuilder();
    words
        .replace('\t', ' ')
        .codePoints()
        .forEach(
            character -> {
              String one = Character.toString(character);
              shown.append(text.missing(PdfFace.SANS, one).isEmpty() ? one : "?");
            });
    return shown.toString();
  }
}
