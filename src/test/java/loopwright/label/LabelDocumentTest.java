package loopwright.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import loopwright.print.QrReader;
import loopwright.problem.Refused;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Labels are looked at as a reader of the PDF sees them: rendered, and by what text lies where. */
class LabelDocumentTest {
  private static final int DOTS_PER_INCH = 203;

  private static Label label(long number, String kind, String family, String serial, String about) {
    LabelCode code = LabelCode.ofComponent(number);
    return new Label(
        "https://loops.example:8470/c/" + code,
        code,
        List.of("4.0 m", "13.1 ft"),
        kind,
        family,
        serial,
        about);
  }

  private static Label cable(long number) {
    return label(number, "extension cable", "Q8", "XC-" + number, "Harrow HX-40");
  }

  /** The longest that the register takes: 40 for a family, 60 for a serial, 80 for the others. */
  private static Label longest(long number) {
    return label(
        number,
        "driver, system length from a drawing",
        "W".repeat(40),
        "W".repeat(60),
        "W".repeat(80) + " " + "M".repeat(80));
  }

  private static List<Label> cables(int howMany) {
    List<Label> cables = new ArrayList<>();
    for (int i = 1; i <= howMany; i++) {
      cables.add(cable(i));
    }
    return cables;
  }

  private static PDDocument made(List<Label> labels, Paper paper) throws IOException {
    return Loader.loadPDF(LabelDocument.of(labels, paper));
  }

  private static String text(PDDocument document) throws IOException {
    return new PDFTextStripper().getText(document);
  }

  @ParameterizedTest(name = "{0} × {1} mm")
  @CsvSource({"62, 29", "50, 50", "30, 60", "25, 14", "100, 70"})
  void theCodeOfASingleLabelLeadsToItsPart(double width, double height) throws IOException {
    try (PDDocument document = made(List.of(cable(417)), new Paper.Single(width, height))) {
      BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, DOTS_PER_INCH);
      assertThat(QrReader.read(image)).contains("https://loops.example:8470/c/1C00D10");
      assertThat(document.getPage(0).getMediaBox().getWidth() / 72 * 25.4)
          .isBetween(width - 0.1, width + 0.1);
    }
  }

  @Test
  void theLabelSaysLengthInBothUnitsKindFamilySerialMakerAndCode() throws IOException {
    try (PDDocument document = made(List.of(cable(417)), new Paper.Single(62, 29))) {
      assertThat(text(document).lines().map(String::strip))
          .containsExactlyInAnyOrder(
              "4.0 m", "13.1 ft", "extension cable · Q8", "XC-417", "Harrow HX-40", "1C00D10");
    }
  }

  @Test
  void aSheetBeginsWhereTheLastOneEndedAndGoesOnOnTheNext() throws IOException {
    Paper sheet = new Paper.Sheet(3, 8, 23, 7, 13, 2.5, 0, true);
    try (PDDocument document = made(cables(27), sheet)) {
      assertThat(document.getNumberOfPages()).isEqualTo(3);
      List<Glyph> first = glyphs(document, 1);
      // 23 and 24 are the second and third column of the last row
      assertThat(first).allSatisfy(g -> assertThat(g.x()).isGreaterThan(mm(sheet.left(22)) - 1));
      assertThat(first).allSatisfy(g -> assertThat(g.top()).isGreaterThan(mm(sheet.top(22)) - 1));
      PDFTextStripper second = new PDFTextStripper();
      second.setStartPage(2);
      second.setEndPage(2);
      assertThat(second.getText(document)).contains("XC-3", "XC-26").doesNotContain("XC-27");
    }
  }

  @ParameterizedTest(name = "{0} × {1}")
  @CsvSource({"3, 8", "2, 4", "4, 10", "1, 3", "5, 13"})
  void nothingLeavesItsLabelAndNothingLiesOnAnother(int columns, int rows) throws IOException {
    Paper sheet = new Paper.Sheet(columns, rows, 1, 5, 8, 1, 1, false);
    List<Label> labels = new ArrayList<>();
    for (int i = 0; i < columns * rows; i++) {
      labels.add(i % 2 == 0 && rows < 9 ? longest(1_000_000 + i) : cable(1_000_000 + i));
    }
    Collections.shuffle(labels, new java.util.Random(7));
    try (PDDocument document = made(labels, sheet)) {
      List<Glyph> glyphs = glyphs(document, 1);
      assertThat(glyphs).hasSizeGreaterThan(columns * rows * 20);
      for (int place = 0; place < columns * rows; place++) {
        double left = mm(sheet.left(place));
        double top = mm(sheet.top(place));
        List<Glyph> inside =
            glyphs.stream()
                .filter(g -> g.within(left, top, mm(sheet.labelWidth()), mm(sheet.labelHeight())))
                .toList();
        assertThat(inside).as("label " + place).hasSizeGreaterThan(20);
        assertNoneLiesOnAnother(inside);
        glyphs.removeAll(inside);
      }
      assertThat(glyphs).as("characters beyond every label").isEmpty();
    }
  }

  @Test
  void theLongestSerialStaysWholeAndTheCodeReadable() throws IOException {
    try (PDDocument document = made(List.of(longest(9)), new Paper.Single(62, 29))) {
      assertThat(text(document).replaceAll("\\s", "")).contains("W".repeat(60));
      BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, DOTS_PER_INCH);
      assertThat(QrReader.read(image)).contains(longest(9).address());
      assertNoneLiesOnAnother(glyphs(document, 1));
    }
  }

  @Test
  void theLengthIsTheLargestAndGrowsWithTheLabel() throws IOException {
    assertThat(largest(new Paper.Single(62, 29))).isGreaterThan(20);
    assertThat(largest(new Paper.Single(100, 50)))
        .isGreaterThan(1.5 * largest(new Paper.Single(62, 29)));
  }

  private static double largest(Paper paper) throws IOException {
    try (PDDocument document = made(List.of(cable(1)), paper)) {
      double largest = glyphs(document, 1).stream().mapToDouble(Glyph::size).max().orElse(0);
      String large =
          glyphs(document, 1).stream()
              .filter(g -> g.size() == largest)
              .map(Glyph::text)
              .reduce("", String::concat);
      assertThat(large).isEqualTo("4.0m13.1ft");
      return largest;
    }
  }

  @Test
  void otherScriptsArePrintedAndAMissingCharacterIsNamed() throws IOException {
    Label latin = label(1, "probe", "Ø8", "Ł-1", "Ωμέγα Завод, office fjord");
    try (PDDocument document = made(List.of(latin), new Paper.Single(62, 29))) {
      assertThat(text(document)).contains("Ωμέγα Завод, office fjord").contains("Ł-1");
    }
    Label unknown = label(1, "probe", "Q8", "探-1", "Harrow");
    assertThatThrownBy(() -> LabelDocument.of(List.of(unknown), new Paper.Single(62, 29)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("character 探");
  }

  @Test
  void whatDoesNotFitIsRefusedInWords() {
    assertThatThrownBy(() -> LabelDocument.of(List.of(longest(1)), new Paper.Single(26, 13)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("26 × 13 mm are too small");
    assertThatThrownBy(() -> new Paper.Sheet(8, 24, 1, 20, 20, 0, 0, false))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Choose fewer columns");
    assertThatThrownBy(() -> new Paper.Sheet(3, 8, 25, 0, 0, 0, 0, false))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("1 to 24");
    assertThatThrownBy(() -> LabelDocument.of(List.of(), new Paper.Single(62, 29)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Tick at least one");
  }

  private static double mm(double millimetres) {
    return millimetres * 72 / 25.4;
  }

  /** A character on a page, points from its upper left corner. */
  private record Glyph(
      String text, double x, double top, double width, double height, double size) {
    boolean within(double left, double upper, double wide, double high) {
      return x >= left && x + width <= left + wide && top >= upper && top + height <= upper + high;
    }

    boolean liesOn(Glyph other) {
      double slack = 0.05;
      return x + slack < other.x + other.width
          && other.x + slack < x + width
          && top + slack < other.top + other.height
          && other.top + slack < top + height;
    }
  }

  private static void assertNoneLiesOnAnother(List<Glyph> glyphs) {
    for (int i = 0; i < glyphs.size(); i++) {
      for (int j = i + 1; j < glyphs.size(); j++) {
        if (glyphs.get(i).liesOn(glyphs.get(j))) {
          throw new AssertionError(glyphs.get(i) + " lies on " + glyphs.get(j));
        }
      }
    }
  }

  private static List<Glyph> glyphs(PDDocument document, int page) throws IOException {
    List<Glyph> glyphs = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition at) {
            double size = at.getFontSizeInPt();
            double capitals = size * 0.698;
            if (!at.getUnicode().isBlank()) {
              glyphs.add(
                  new Glyph(
                      at.getUnicode(),
                      at.getXDirAdj(),
                      at.getYDirAdj() - capitals,
                      at.getWidthDirAdj(),
                      capitals,
                      size));
            }
          }
        };
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.getText(document);
    return glyphs;
  }
}
