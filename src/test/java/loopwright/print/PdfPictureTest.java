package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Our own drawings on a PDF page. */
class PdfPictureTest {

  private static String drawn(String inside) throws IOException {
    String svg = "<svg width=\"200\" height=\"100\" font-size=\"10\">" + inside + "</svg>";
    try (PDDocument document = new PDDocument()) {
      PDPage page = new PDPage();
      document.addPage(page);
      try (PDPageContentStream content = new PDPageContentStream(document, page)) {
        assertThat(PdfPicture.draw(new PdfText(document), content, svg, 50, 700, 400))
            .as("as wide as asked, as high as that makes it")
            .isEqualTo(200);
      }
      ByteArrayOutputStream saved = new ByteArrayOutputStream();
      document.save(saved);
      try (PDDocument read = Loader.loadPDF(saved.toByteArray())) {
        return new PDFTextStripper().getText(read).strip();
      }
    }
  }

  @Test
  void piecesOfATextStandInARowAndWhatAPointerShowsIsLeftOut() throws IOException {
    assertThat(
            drawn(
                "<g fill=\"none\" stroke=\"#123456\"><path d=\"M1 1 h5 v5 H9 V8 L3,3 Z\"/></g>"
                    + "<text x=\"5\" y=\"50\"><title>XC-00417</title>lead <tspan"
                    + " font-weight=\"600\">2.0 m</tspan></text>"))
        .isEqualTo("lead 2.0 m");
  }

  @Test
  void whatItCanNotDrawIsNotLeftOutUnnoticed() {
    assertThatThrownBy(() -> drawn("<ellipse rx=\"3\"/>")).hasMessageContaining("ellipse");
    assertThatThrownBy(() -> drawn("<path d=\"M0 0 C1 1 2 2 3 3\"/>")).hasMessageContaining("C");
  }
}
