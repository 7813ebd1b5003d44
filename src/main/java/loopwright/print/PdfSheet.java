package loopwright.print;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/** One A4 page that is written from the top downwards. Lengths are points of 1/72 inch. */
public final class PdfSheet implements AutoCloseable {
  /** Left edge of what is written. */
  public static final double LEFT = 42;

  /** Width of what is written. */
  public static final double WIDTH = 511;

  private static final double TOP = 806;
  private static final double FOOT = 30;
  private static final double SMALL = 8.5;
  private static final double LEADING = 1.28;
  private static final double LABEL = 74;
  private static final double TIGHT = 7.5;
  private static final double INDENT = 11;
  private static final double HALF = 248;

  /** Smaller than that nobody reads in a plant; what doesn't fit then ends with dots. */
  private static final double SMALLEST = 6.2;

  private static final Color SOFT = new Color(0x56626e);
  private static final Color LINE = new Color(0x9aa3ab);
  private static final Color WASH = new Color(0xeef3f7);

  private final PDPageContentStream page;
  private final PdfText text;
  private double y = TOP;

  /** Begins an empty page. */
  public PdfSheet(PDDocument document, PDPage page, PdfText text) throws IOException {
    this(new PDPageContentStream(document, page), text);
  }

  private PdfSheet(PDPageContentStream page, PdfText text) {
    this.page = page;
    this.text = text;
  }

  /** To add something to a page that is written already. */
  public static PdfSheet onTopOf(PDDocument document, PDPage page, PdfText text)
      throws IOException {
    return new PdfSheet(
        new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true), text);
  }

  /** For drawing on it. */
  public PDPageContentStream page() {
    return page;
  }

  /** Measures and writes. */
  public PdfText text() {
    return text;
  }

  /** Where the next thing is put. */
  public double y() {
    return y;
  }

  /** Goes on there. */
  public void moveTo(double y) {
    this.y = y;
  }

  /** Leaves that much room. */
  public void gap(double points) {
    y -= points;
  }

  /** How much room is left above the foot. */
  public double room() {
    return y - FOOT - 14;
  }

  /** What stands under everything. */
  public void foot(String left, String right) throws IOException {
    at(PdfFace.MONO_BOLD, LEFT, FOOT, 7, left, SOFT);
    double width = text.width(PdfFace.SANS, right, 7);
    at(PdfFace.SANS, LEFT + WIDTH - width, FOOT, 7, right, SOFT);
  }

  /** The largest line. */
  public void title(String words) throws IOException {
    line(PdfFace.SANS_BOLD, 17, words);
    gap(4);
  }

  /** Of a part of the page. */
  public void heading(String words) throws IOException {
    heading(Place.WHOLE, words);
  }

  /** Wrapped over the whole width. */
  public void line(PdfFace face, double size, String words) throws IOException {
    block(face, size, LEFT, WIDTH, words);
  }

  private void block(PdfFace face, double size, double x, double width, String words)
      throws IOException {
    for (String line : text.wrapped(face, printable(words), size, width)) {
      y -= size * LEADING;
      at(face, x, y + size * 0.28, size, line, Color.BLACK);
    }
  }

  /** A label with what it says. */
  public void fact(String label, String words) throws IOException {
    if (words.isEmpty()) {
      return;
    }
    double top = y;
    block(PdfFace.SANS, SMALL, LEFT + LABEL, WIDTH - LABEL, words);
    at(PdfFace.SANS_BOLD, LEFT, top - SMALL * LEADING + SMALL * 0.28, SMALL, label, SOFT);
  }

  /**
   * A column of the page.
   *
   * @param size of its lists
   */
  public record Place(double left, double width, double size) {
    public static final Place WHOLE = new Place(LEFT, WIDTH, SMALL);
    public static final List<Place> HALVES =
        List.of(new Place(LEFT, HALF, TIGHT), new Place(LEFT + WIDTH - HALF, HALF, TIGHT));
  }

  /** Wrapped within a column. */
  public void line(Place place, PdfFace face, double size, String words) throws IOException {
    block(face, size, place.left(), place.width(), words);
  }

  /** Of a part of a column. */
  public void heading(Place place, String words) throws IOException {
    block(PdfFace.SANS_BOLD, place.size() + 1.5, place.left(), place.width(), words);
    gap(1);
  }

  /** One of a list, with a box to tick before it. */
  public void tick(Place place, String words) throws IOException {
    page.setStrokingColor(LINE);
    page.setLineWidth(0.7f);
    page.setLineDashPattern(new float[0], 0);
    page.addRect((float) place.left(), (float) (y - place.size() * 1.1), 6, 6);
    page.stroke();
    block(PdfFace.SANS, place.size(), place.left() + INDENT, place.width() - INDENT, words);
  }

  /** How high a heading with its list to tick comes. */
  public double ticksHeight(Place place, List<String> list) {
    int lines =
        list.stream()
            .mapToInt(
                words ->
                    text.wrapped(
                            PdfFace.SANS, printable(words), place.size(), place.width() - INDENT)
                        .size())
            .sum();
    return (place.size() + 1.5) * LEADING + 1 + lines * place.size() * LEADING;
  }

  /** One of a list. */
  public void item(String words) throws IOException {
    at(PdfFace.SANS_BOLD, LEFT, y - SMALL * LEADING + SMALL * 0.28, SMALL, "–", Color.BLACK);
    block(PdfFace.SANS, SMALL, LEFT + 11, WIDTH - 11, words);
  }

  /** A line of a table of contents. */
  public void entry(String tag, String words, String number) throws IOException {
    double size = 9.5;
    y -= size * 1.62;
    at(
        PdfFace.MONO_BOLD,
        LEFT,
        y + 3,
        size,
        shortened(PdfFace.MONO_BOLD, tag, size, 110),
        Color.BLACK);
    at(PdfFace.SANS, LEFT + 118, y + 3, size, shortened(PdfFace.SANS, words, size, 340), SOFT);
    double width = text.width(PdfFace.SANS, number, size);
    at(PdfFace.SANS, LEFT + WIDTH - width, y + 3, size, number, Color.BLACK);
    rule(LEFT, y, LEFT + WIDTH, y, 0.3);
  }

  private String shortened(PdfFace face, String words, double size, double width) {
    String kept = printable(words);
    while (!kept.isEmpty() && text.width(face, kept + "…", size) > width) {
      kept = kept.substring(0, kept.length() - 1);
    }
    return kept.equals(printable(words)) ? kept : kept + "…";
  }

  /** A table with empty rows to write in. */
  public void blanks(List<String> headings, int rows) throws IOException {
    double each = WIDTH / headings.size();
    List<Double> widths = headings.stream().map(any -> each).toList();
    List<List<String>> empty = new ArrayList<>();
    for (int i = 0; i < rows; i++) {
      empty.add(headings.stream().map(any -> "").toList());
    }
    table(headings, widths, empty, 17);
  }

  /**
   * A ruled table.
   *
   * @param widths of the columns, points
   * @param height of a row, points
   */
  public void table(
      List<String> headings, List<Double> widths, List<List<String>> rows, double height)
      throws IOException {
    double top = y;
    double whole = widths.stream().mapToDouble(Double::doubleValue).sum();
    page.setNonStrokingColor(WASH);
    page.addRect((float) LEFT, (float) (y - 13), (float) whole, 13);
    page.fill();
    row(headings, widths, PdfFace.SANS_BOLD, 13, 7);
    for (List<String> row : rows) {
      row(row, widths, PdfFace.SANS, height, 8.5);
    }
    double x = LEFT;
    rule(x, top, x, y, 0.5);
    for (double width : widths) {
      x += width;
      rule(x, top, x, y, 0.5);
    }
    rule(LEFT, top, LEFT + whole, top, 0.5);
  }

  private void row(
      List<String> cells, List<Double> widths, PdfFace face, double height, double size)
      throws IOException {
    double x = LEFT;
    double whole = 0;
    for (int i = 0; i < cells.size(); i++) {
      double fits = fitting(face, cells.get(i), size, widths.get(i) - 5);
      String words = shortened(face, cells.get(i), fits, widths.get(i) - 5);
      at(face, x + 3, y - height / 2 - fits * 0.34, fits, words, Color.BLACK);
      x += widths.get(i);
      whole += widths.get(i);
    }
    y -= height;
    rule(LEFT, y, LEFT + whole, y, 0.5);
  }

  /** The size in which a cell's words fit, down to the smallest that is read. */
  private double fitting(PdfFace face, String words, double size, double width) {
    double needed = text.width(face, printable(words), 1);
    return needed * size <= width ? size : Math.max(Math.min(size, SMALLEST), width / needed);
  }

  /** A thin line. */
  public void rule(double x1, double y1, double x2, double y2, double width) throws IOException {
    page.setStrokingColor(LINE);
    page.setLineWidth((float) width);
    page.setLineDashPattern(new float[0], 0);
    page.moveTo((float) x1, (float) y1);
    page.lineTo((float) x2, (float) y2);
    page.stroke();
  }

  private void at(PdfFace face, double x, double y, double size, String words, Color colour)
      throws IOException {
    page.setNonStrokingColor(colour);
    text.write(page, face, x, y, size, printable(words));
    page.setNonStrokingColor(Color.BLACK);
  }

  /** Letters that no font here has stand as a box: the sheet says so, rather than fail whole. */
  private String printable(String words) {
    StringBuilder kept = new StringBuilder();
    words
        .replaceAll("\\s+", " ")
        .codePoints()
        .forEach(
            letter -> {
              String one = Character.toString(letter);
              boolean there =
                  text.missing(PdfFace.SANS, one).isEmpty()
                      && text.missing(PdfFace.MONO_BOLD, one).isEmpty();
              kept.append(there ? one : "?");
            });
    return kept.toString();
  }

  @Override
  public void close() throws IOException {
    page.close();
  }
}
