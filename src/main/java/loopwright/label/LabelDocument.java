package loopwright.label;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import loopwright.print.PdfText;
import loopwright.problem.Refused;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Labels on their paper, as PDF. */
final class LabelDocument {
  static final int MOST = 1_000;

  private LabelDocument() {}

  /**
   * @throws Refused if there are none or too many, or one does not fit
   */
  static byte[] of(List<Label> labels, Paper paper) {
    if (labels.isEmpty()) {
      throw new Refused(LabelProblem.NOTHING_CHOSEN);
    }
    if (labels.size() > MOST) {
      throw new Refused(LabelProblem.TOO_MANY, labels.size(), MOST);
    }
    try (PDDocument document = new PDDocument()) {
      document.getDocumentInformation().setTitle("Labels");
      write(document, labels, paper);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
  }

  private static void write(PDDocument document, List<Label> labels, Paper paper)
      throws IOException {
    PdfText text = new PdfText(document);
    int place = paper.skipped();
    int done = 0;
    while (done < labels.size()) {
      int room = paper.perPage() - place;
      int until = Math.min(labels.size(), done + room);
      writePage(document, text, labels.subList(done, until), paper, place);
      done = until;
      place = 0;
    }
  }

  private static void writePage(
      PDDocument document, PdfText text, List<Label> labels, Paper paper, int first)
      throws IOException {
    PDPage page =
        new PDPage(
            new PDRectangle(
                (float) (paper.pageWidth() * Paper.MM), (float) (paper.pageHeight() * Paper.MM)));
    document.addPage(page);
    try (PDPageContentStream out = new PDPageContentStream(document, page)) {
      LabelDrawing drawing = new LabelDrawing(text, out);
      for (int i = 0; i < labels.size(); i++) {
        LabelDrawing.Box box = box(paper, first + i);
        if (paper.outlined()) {
          outline(out, box);
        }
        drawing.draw(labels.get(i), box);
      }
    }
  }

  private static void outline(PDPageContentStream out, LabelDrawing.Box box) throws IOException {
    out.setStrokingColor(0.6f);
    out.setLineWidth(0.3f);
    out.addRect((float) box.x(), (float) box.y(), (float) box.width(), (float) box.height());
    out.stroke();
  }

  private static LabelDrawing.Box box(Paper paper, int place) {
    double height = paper.labelHeight() * Paper.MM;
    double top = (paper.pageHeight() - paper.top(place)) * Paper.MM;
    return new LabelDrawing.Box(
        paper.left(place) * Paper.MM, top - height, paper.labelWidth() * Paper.MM, height);
  }
}
