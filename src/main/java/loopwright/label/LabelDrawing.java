package loopwright.label;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.print.PdfFace;
import loopwright.print.PdfText;
import loopwright.print.QrCode;
import loopwright.problem.Refused;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/**
 * Draws one label: the code at the left (or above, on a tall label), beside it the length as large
 * as fits, kind and family, serial, maker and model. Lengths inside are points.
 */
final class LabelDrawing {
  private static final double LARGEST_SMALL_TEXT = 14;
  private static final double LEAST_SMALL_TEXT = 4;
  private static final double LEAST_LARGE_TEXT = 7;

  /** How much of the height the length gets, if anyhow possible. */
  private static final double LARGE_SHARE = 0.58;

  /** Room between two base lines, in em. */
  private static final double LEADING = 1.22;

  /** Between two lines of figures, in em: they have no descenders. */
  private static final double FIGURES_APART = 0.24;

  /** What a telephone still reads at a hand's breadth, mm; common practice, no source. */
  private static final double LEAST_MODULE = 0.25;

  private final PdfText text;
  private final PDPageContentStream page;

  LabelDrawing(PdfText text, PDPageContentStream page) {
    this.text = text;
    this.page = page;
  }

  /** A rectangle on the page, points from its lower left corner. */
  record Box(double x, double y, double width, double height) {
    Box inset(double by) {
      return new Box(x + by, y + by, width - 2 * by, height - 2 * by);
    }

    double top() {
      return y + height;
    }
  }

  private record Line(PdfFace face, double size, String text) {
    double height() {
      return size * LEADING;
    }
  }

  /**
   * @throws Refused if the label is too small for what it has to say, or a character is missing
   */
  void draw(Label label, Box whole) throws IOException {
    refuseMissing(label);
    double margin = Math.min(Math.max(Math.min(whole.width, whole.height) * 0.09, 3.5), 12);
    Box box = whole.inset(margin);
    boolean wide = box.width > box.height * 1.15;
    QrCode code = QrCode.of(label.address());
    double side = wide ? besideText(box) : aboveText(box);
    refuseTooFine(side / code.across(), whole);
    double clear = QrCode.QUIET * side / code.across();
    double under = clear + codeSize(label, side) * PdfFace.CAPITALS;
    double left = wide ? box.x : box.x + (box.width - side) / 2;
    double bottom = wide ? box.y + (box.height - side - under) / 2 + under : box.top() - side;
    code.draw(page, left, bottom, side);
    writeCode(label, left, bottom - under, side);
    write(label, wide ? right(box, side, margin) : below(box, side + under, margin), whole);
  }

  /** The code's own text stands under it, so the square is a little less high than the label. */
  private static double besideText(Box box) {
    return Math.min(box.height * 0.85, box.width * 0.42);
  }

  private static double aboveText(Box box) {
    return Math.min(box.width, box.height * 0.42);
  }

  private static Box right(Box box, double side, double margin) {
    double from = side + margin * 0.6;
    return new Box(box.x + from, box.y, box.width - from, box.height);
  }

  private static Box below(Box box, double used, double margin) {
    return new Box(box.x, box.y, box.width, box.height - used - margin * 0.4);
  }

  private double codeSize(Label label, double side) {
    String code = label.code().text();
    double fitting = side * 0.8 / text.width(PdfFace.MONO_BOLD, code, 1);
    return Math.min(fitting, Math.min(side * 0.13, 10));
  }

  private void writeCode(Label label, double left, double base, double side) throws IOException {
    double size = codeSize(label, side);
    String code = label.code().text();
    double width = text.width(PdfFace.MONO_BOLD, code, size);
    text.write(page, PdfFace.MONO_BOLD, left + (side - width) / 2, base, size, code);
  }

  private void write(Label label, Box box, Box whole) throws IOException {
    List<Line> small = small(label, box, whole);
    double smallHeight = small.stream().mapToDouble(Line::height).sum();
    List<String> large = large(label, box.width, box.height - smallHeight);
    double size = largeSize(large, box.width, box.height - smallHeight);
    double used = largeHeight(large.size(), size) + smallHeight + size * FIGURES_APART;
    double y = box.top() - Math.max(0, (box.height - used) / 2);
    for (String line : large) {
      y -= size * PdfFace.CAPITALS;
      text.write(page, PdfFace.SANS_BOLD, box.x, y, size, line);
      y -= size * FIGURES_APART;
    }
    for (Line line : small) {
      y -= line.height();
      text.write(page, line.face, box.x, y + line.size * 0.28, line.size, line.text);
    }
  }

  /** The largest small print that leaves most of the room to the length. */
  private List<Line> small(Label label, Box box, Box whole) {
    double most = Math.min(LARGEST_SMALL_TEXT, box.height * 0.13);
    for (double size = most; size >= LEAST_SMALL_TEXT; size -= 0.25) {
      List<Line> lines = lines(label, box.width, size, Integer.MAX_VALUE);
      if (fits(label, lines, box, box.height * LARGE_SHARE)) {
        return lines;
      }
    }
    List<Line> cut = lines(label, box.width, LEAST_SMALL_TEXT, 1);
    if (!fits(label, cut, box, largeHeight(1, LEAST_LARGE_TEXT))) {
      throw new Refused(
          LabelProblem.TOO_SMALL,
          Paper.millimetres(whole.width / Paper.MM),
          Paper.millimetres(whole.height / Paper.MM),
          "length and serial " + label.serial() + " don't fit");
    }
    return cut;
  }

  private boolean fits(Label label, List<Line> small, Box box, double forLarge) {
    double rest = box.height - small.stream().mapToDouble(Line::height).sum();
    return rest >= forLarge
        && largeSize(large(label, box.width, rest), box.width, rest) >= LEAST_LARGE_TEXT;
  }

  private List<Line> lines(Label label, double width, double size, int most) {
    List<Line> lines = new ArrayList<>();
    String both = label.inWords();
    if (text.width(PdfFace.SANS_BOLD, both, size) <= width) {
      lines.add(new Line(PdfFace.SANS_BOLD, size, both));
    } else {
      add(lines, PdfFace.SANS_BOLD, label.kind(), size, width, most);
      add(lines, PdfFace.SANS_BOLD, label.family(), size, width, most);
    }
    add(lines, PdfFace.MONO_BOLD, label.serial(), size, width, Integer.MAX_VALUE);
    add(lines, PdfFace.SANS, label.about(), size * 0.9, width, most);
    return lines;
  }

  private void add(
      List<Line> lines, PdfFace face, String words, double size, double width, int most) {
    List<String> wrapped = text.wrapped(face, words, size, width);
    for (int i = 0; i < Math.min(wrapped.size(), most); i++) {
      boolean cut = i == most - 1 && wrapped.size() > most;
      lines.add(
          new Line(
              face, size, cut ? shortened(face, wrapped.get(i), size, width) : wrapped.get(i)));
    }
  }

  private String shortened(PdfFace face, String line, double size, double width) {
    String kept = line;
    while (!kept.isEmpty() && text.width(face, kept + "…", size) > width) {
      kept = kept.substring(0, kept.length() - 1);
    }
    return kept + "…";
  }

  /** On one line or on two, whichever is larger. */
  private List<String> large(Label label, double width, double height) {
    List<String> one = List.of(String.join(" · ", label.large()));
    return largeSize(one, width, height) > largeSize(label.large(), width, height)
        ? one
        : label.large();
  }

  private double largeSize(List<String> lines, double width, double height) {
    double widest =
        lines.stream().mapToDouble(l -> text.width(PdfFace.SANS_BOLD, l, 1)).max().orElse(1);
    return Math.min(width / widest, height / (largeHeight(lines.size(), 1) + FIGURES_APART));
  }

  private static double largeHeight(int lines, double size) {
    return size * (lines * PdfFace.CAPITALS + (lines - 1) * FIGURES_APART);
  }

  private void refuseMissing(Label label) {
    Optional<String> missing =
        Stream.concat(
                Stream.of(label.kind(), label.family(), label.about()), label.large().stream())
            .map(words -> text.missing(PdfFace.SANS_BOLD, words))
            .flatMap(Optional::stream)
            .findFirst()
            .or(() -> text.missing(PdfFace.MONO_BOLD, label.serial()));
    missing.ifPresent(
        character -> {
          throw new Refused(LabelProblem.NO_GLYPH, label.serial(), character);
        });
  }

  private static void refuseTooFine(double module, Box whole) {
    if (module < LEAST_MODULE * Paper.MM) {
      throw new Refused(
          LabelProblem.TOO_SMALL,
          Paper.millimetres(whole.width / Paper.MM),
          Paper.millimetres(whole.height / Paper.MM),
          "the squares of the code would be smaller than 0.25 mm, and no telephone reads them");
    }
  }
}
