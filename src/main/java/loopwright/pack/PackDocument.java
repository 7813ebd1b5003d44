package loopwright.pack;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.print.PdfFace;
import loopwright.print.PdfSheet;
import loopwright.print.PdfText;
import loopwright.print.QrCode;
import loopwright.time.SiteMoment;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PageMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;

/**
 * A pack on paper: a first page with cautions, contents, then the sheet of each loop, with
 * bookmarks and links between them.
 */
final class PackDocument {
  static final int MOST = 1_000;
  private static final int LINES_A_PAGE = 44;

  private final PDDocument document;
  private final Revision revision;
  private final Identity identity;
  private final List<Revision.Loop> loops;
  private final PdfText text;
  private final Codes codes;
  private final List<PDPage> pages = new ArrayList<>();

  private PackDocument(
      PDDocument document,
      Revision revision,
      Identity identity,
      List<Revision.Loop> loops,
      Codes codes) {
    this.document = document;
    this.revision = revision;
    this.identity = identity;
    this.loops = loops;
    this.text = new PdfText(document);
    this.codes = codes;
  }

  /**
   * What the codes on paper say.
   *
   * @param points for each loop's sheet
   * @param takeAlong where the pack is taken along on a phone; empty where nobody knows the address
   */
  record Codes(Function<Long, String> points, Optional<String> takeAlong) {}

  /**
   * @throws Refused {@link PackProblem#NO_LETTER} if a text can't be printed
   */
  static byte[] of(Revision revision, Identity identity, List<Revision.Loop> loops, Codes codes) {
    try (PDDocument document = new PDDocument()) {
      new PackDocument(document, revision, identity, loops, codes).write();
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
  }

  private String title() {
    return "Work pack %s, revision %s".formatted(revision.head().outage(), revision.number());
  }

  private void write() throws IOException {
    document.getDocumentInformation().setTitle(title());
    document.getDocumentInformation().setSubject(identity.toString());
    int contents = Math.max(1, (loops.size() + LINES_A_PAGE - 1) / LINES_A_PAGE);
    fresh();
    for (int i = 0; i < contents; i++) {
      fresh();
    }
    List<Integer> starts = new ArrayList<>();
    for (Revision.Loop loop : loops) {
      starts.add(pages.size());
      new SheetDrawing(loop.sheet(), () -> new PdfSheet(document, fresh(), text))
          .draw(codes.points().apply(loop.point()));
    }
    first(pages.get(0));
    for (int i = 0; i < contents; i++) {
      contents(1 + i, i * LINES_A_PAGE, starts);
    }
    for (int i = 0; i < pages.size(); i++) {
      try (PdfSheet paper = PdfSheet.onTopOf(document, pages.get(i), text)) {
        paper.foot(identity.toString(), "page " + (i + 1) + " of " + pages.size());
      }
    }
    outline(starts);
  }

  private PDPage fresh() {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    pages.add(page);
    return page;
  }

  private void takeAlong(PdfSheet paper) throws IOException {
    if (codes.takeAlong().isPresent()) {
      QrCode.of(codes.takeAlong().get())
          .draw(
              paper.page(),
              PdfSheet.LEFT + PdfSheet.WIDTH - SheetDrawing.CODE,
              paper.y() - SheetDrawing.CODE + 6,
              SheetDrawing.CODE);
      paper.line(PdfFace.SANS, 8, "The code leads to this pack for a phone or tablet.");
    }
  }

  private void first(PDPage page) throws IOException {
    Revision.Head head = revision.head();
    try (PdfSheet paper = new PdfSheet(document, page, text)) {
      takeAlong(paper);
      paper.title(title());
      paper.line(PdfFace.SANS_BOLD, 13, head.name());
      paper.gap(6);
      paper.fact("Site", head.site());
      paper.fact("Window", head.window());
      paper.fact("Trains", head.trains());
      paper.fact("Team", head.team().isEmpty() ? "not said" : head.team());
      paper.fact("Loops", Integer.toString(loops.size()));
      paper.fact("Hours", head.hours());
      paper.fact(
          "Issued",
          revision.by() + ", " + SiteMoment.shown(revision.at(), ZoneOffset.UTC) + " UTC");
      paper.fact("Note", revision.note());
      paper.fact("Pack", identity.toString());
      paper.gap(8);
      paper.heading("Cautions");
      for (String caution : head.cautions()) {
        paper.item(caution);
      }
      paper.gap(8);
      paper.heading("Standards used");
      for (String standard : head.standards()) {
        paper.item(standard);
      }
      paper.gap(2);
      paper.blanks(List.of("What", "Identification", "Certificate", "Due"), 5);
      paper.gap(8);
      paper.heading("Bypasses, numbers of the site's procedure");
      paper.blanks(
          List.of(
              "Number",
              "Function",
              "Vote meanwhile",
              "On: who, when",
              "Off: who, when",
              "Proved by"),
          6);
      paper.gap(8);
      paper.heading("Signatures");
      paper.blanks(List.of("Work done by", "Checked by", "Accepted by"), 2);
    }
  }

  private void contents(int at, int from, List<Integer> starts) throws IOException {
    PDPage page = pages.get(at);
    try (PdfSheet paper = new PdfSheet(document, page, text)) {
      paper.title(from == 0 ? "Contents" : "Contents, continued");
      int until = Math.min(loops.size(), from + LINES_A_PAGE);
      for (int i = from; i < until; i++) {
        LoopSheet sheet = loops.get(i).sheet();
        double top = paper.y();
        paper.entry(sheet.tag(), where(sheet.loop()), Integer.toString(starts.get(i) + 1));
        link(page, top, paper.y(), pages.get(starts.get(i)));
      }
    }
  }

  /** Places of speed and phase marks often begin with the machine. */
  private static String where(LoopSheet.About loop) {
    return loop.place().startsWith(loop.machine())
        ? loop.train() + ", " + loop.place()
        : loop.train() + ", " + loop.machine() + ", " + loop.place();
  }

  private static void link(PDPage from, double top, double bottom, PDPage to) throws IOException {
    PDAnnotationLink link = new PDAnnotationLink();
    link.setRectangle(
        new PDRectangle(
            (float) PdfSheet.LEFT, (float) bottom, (float) PdfSheet.WIDTH, (float) (top - bottom)));
    PDPageFitDestination there = new PDPageFitDestination();
    there.setPage(to);
    link.setDestination(there);
    PDBorderStyleDictionary none = new PDBorderStyleDictionary();
    none.setWidth(0);
    link.setBorderStyle(none);
    from.getAnnotations().add(link);
  }

  private void outline(List<Integer> starts) {
    PDDocumentOutline outline = new PDDocumentOutline();
    document.getDocumentCatalog().setDocumentOutline(outline);
    outline.addLast(bookmark(title(), pages.get(0)));
    outline.addLast(bookmark("Contents", pages.get(1)));
    Map<String, PDOutlineItem> trains = new LinkedHashMap<>();
    for (int i = 0; i < loops.size(); i++) {
      LoopSheet sheet = loops.get(i).sheet();
      PDPage page = pages.get(starts.get(i));
      PDOutlineItem train =
          trains.computeIfAbsent(
              sheet.loop().train() + ", " + sheet.loop().machine(),
              name -> {
                PDOutlineItem item = bookmark(name, page);
                outline.addLast(item);
                return item;
              });
      train.addLast(bookmark(sheet.tag(), page));
    }
    document.getDocumentCatalog().setPageMode(PageMode.USE_OUTLINES);
  }

  private static PDOutlineItem bookmark(String name, PDPage page) {
    PDOutlineItem item = new PDOutlineItem();
    item.setTitle(name);
    item.setDestination(page);
    return item;
  }
}
