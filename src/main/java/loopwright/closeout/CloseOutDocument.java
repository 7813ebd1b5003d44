package loopwright.closeout;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import loopwright.outage.Outage;
import loopwright.pack.Returned;
import loopwright.print.PdfFace;
import loopwright.print.PdfSheet;
import loopwright.print.PdfText;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** The close-out on paper. */
final class CloseOutDocument {
  private final PDDocument document;
  private final PdfText text;
  private final CloseOut closeOut;
  private final List<PDPage> pages = new ArrayList<>();
  private PdfSheet sheet;

  private CloseOutDocument(PDDocument document, CloseOut closeOut) throws IOException {
    this.document = document;
    this.text = new PdfText(document);
    this.closeOut = closeOut;
    this.sheet = fresh();
  }

  /**
   * @param made when, as printed
   */
  static byte[] of(CloseOut closeOut, String made) {
    try (PDDocument document = new PDDocument()) {
      CloseOutDocument writer = new CloseOutDocument(document, closeOut);
      writer.write(made);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
  }

  private PdfSheet fresh() throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    pages.add(page);
    return new PdfSheet(document, page, text);
  }

  private void need(double points) throws IOException {
    if (sheet.room() < points) {
      sheet.close();
      sheet = fresh();
    }
  }

  private void write(String made) throws IOException {
    Outage outage = closeOut.outage();
    String title = "Close-out of " + outage.number();
    document.getDocumentInformation().setTitle(title);
    sheet.title(title);
    sheet.line(PdfFace.SANS_BOLD, 13, outage.name());
    sheet.gap(6);
    sheet.fact("Site", outage.siteName());
    sheet.fact("Window", outage.begins() + " to " + outage.ends());
    sheet.fact("Trains", outage.trainCodes());
    sheet.fact("Team", outage.team());
    sheet.fact("State", outage.state().word());
    for (Outage.Step step : outage.steps()) {
      sheet.fact(
          Text.capital(step.state().word()),
          step.who() + ", " + SiteMoment.shown(step.at(), outage.zone()) + ": " + step.note());
    }
    sheet.fact("Loops", closeOut.summary());
    sheet.fact("Made", made);
    for (String outcome :
        List.of(
            CloseOut.LoopLine.NOTHING_SAID, Returned.FAILED, Returned.NOT_DONE, Returned.DONE)) {
      section(outcome);
    }
    bypasses();
    sheet.close();
    for (int i = 0; i < pages.size(); i++) {
      try (PdfSheet foot = PdfSheet.onTopOf(document, pages.get(i), text)) {
        foot.foot(outage.number(), "page " + (i + 1) + " of " + pages.size());
      }
    }
  }

  private void section(String outcome) throws IOException {
    List<CloseOut.LoopLine> loops = closeOut.with(outcome);
    if (loops.isEmpty()) {
      return;
    }
    sheet.gap(8);
    need(60);
    sheet.heading(Text.capital(outcome) + " (" + loops.size() + ")");
    for (CloseOut.LoopLine loop : loops) {
      loop(loop);
    }
  }

  private void loop(CloseOut.LoopLine loop) throws IOException {
    sheet.gap(3);
    need(50);
    sheet.line(PdfFace.MONO_BOLD, 9.5, loop.tag());
    sheet.fact("Reason", loop.reason());
    sheet.fact("Recorded", loop.told());
    for (String emergent : loop.emergent()) {
      need(30);
      sheet.fact("Emergent", emergent);
    }
    for (String temporary : loop.temporary()) {
      need(30);
      sheet.fact("Still temporary", temporary);
    }
    for (CloseOut.Exposed exposed : loop.exposed()) {
      need(20 + 18.0 * exposed.sentences().size());
      sheet.fact("Out of limits", exposed.record() + ". " + String.join(" ", exposed.sentences()));
    }
    for (String spare : loop.spares()) {
      need(20);
      sheet.fact("Put aside", spare);
    }
    need(20);
    sheet.fact(closeOut.outage().isClosed() ? "At closing" : "Judged now", loop.verdict());
    for (String against : loop.against()) {
      need(30);
      sheet.fact("Not in service", against);
    }
    for (String change : loop.changes()) {
      need(20);
      sheet.fact("Changed", change);
    }
    for (String concession : loop.concessions()) {
      need(30);
      sheet.fact("Concession", concession);
    }
  }

  private void bypasses() throws IOException {
    sheet.gap(8);
    need(40);
    sheet.heading("Bypasses");
    if (closeOut.bypasses().isEmpty()) {
      sheet.line(PdfFace.SANS, 8.5, "None was entered for this outage.");
    }
    for (CloseOut.BypassLine bypass : closeOut.bypasses()) {
      need(24);
      sheet.item((bypass.open() ? "OPEN: " : "") + bypass.number() + " " + bypass.words());
    }
  }
}
