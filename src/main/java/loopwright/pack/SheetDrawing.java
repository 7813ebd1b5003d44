package loopwright.pack;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.print.ChainDrawing;
import loopwright.print.PdfFace;
import loopwright.print.PdfPicture;
import loopwright.print.PdfSheet;
import loopwright.print.QrCode;
import loopwright.problem.Text;
import loopwright.units.Length;

/** One loop's page: chain, targets, limits, steps, and room for what is found and left. */
final class SheetDrawing {
  static final double CODE = 68;
  private static final PdfSheet.Place BESIDE_CODE =
      new PdfSheet.Place(PdfSheet.LEFT, PdfSheet.WIDTH - CODE - 10, 7.5);
  private static final List<Double> READING_WIDTHS =
      List.of(46.0, 58.0, 52.0, 90.0, 66.25, 66.25, 66.25, 66.25);

  private final LoopSheet sheet;
  private final Fresh fresh;
  private PdfSheet paper;

  SheetDrawing(LoopSheet sheet, Fresh fresh) throws IOException {
    this.sheet = sheet;
    this.fresh = fresh;
    this.paper = fresh.page();
  }

  /** Gives the next page. */
  interface Fresh {
    PdfSheet page() throws IOException;
  }

  /** Goes on overleaf where less than that is left. */
  private void need(double points) throws IOException {
    if (paper.room() < points) {
      paper.close();
      paper = fresh.page();
      paper.line(PdfFace.SANS_BOLD, 12, sheet.tag() + ", continued");
      paper.gap(4);
    }
  }

  /**
   * @param address what the code on the sheet says
   */
  void draw(String address) throws IOException {
    double top = paper.y();
    QrCode.of(address)
        .draw(paper.page(), PdfSheet.LEFT + PdfSheet.WIDTH - CODE, top - CODE + 6, CODE);
    paper.title(sheet.tag());
    LoopSheet.About about = sheet.loop();
    paper.fact("Where", join(about.train(), about.machine(), about.place()));
    paper.fact(
        "What",
        join(
            about.kind(),
            boxed("junction box ", about.box()),
            boxed("area ", about.area()),
            boxed("shaft ", about.alloy())));
    paper.gap(2);
    caution();
    paper.moveTo(Math.min(paper.y(), top - CODE));
    chain();
    targets();
    readings();
    others();
    jobs();
    paper.close();
  }

  private static String boxed(String what, String words) {
    return words.isEmpty() ? "" : what + words;
  }

  private static String join(String... words) {
    return Stream.of(words).filter(word -> !word.isEmpty()).collect(Collectors.joining(", "));
  }

  private void caution() throws IOException {
    paper.line(
        BESIDE_CODE,
        PdfFace.SANS_BOLD,
        7.5,
        "Caution: no permission to work. Permit and bypass as the site's procedure says; one channel"
            + " of a voting group at a time; restore and prove.");
    paper.gap(3);
  }

  private void chain() throws IOException {
    double used =
        PdfPicture.draw(
            paper.text(),
            paper.page(),
            ChainDrawing.svg(ChainShown.picture(sheet)),
            PdfSheet.LEFT,
            paper.y(),
            PdfSheet.WIDTH * 0.62);
    paper.gap(used + 2);
    paper.table(
        List.of(
            "Slot",
            "Planned serial",
            "Maker, model, family",
            "Nominal",
            "Found serial",
            "Left serial"),
        List.of(40.0, 82.0, 205.0, 44.0, 70.0, 70.0),
        sheet.chain().stream().map(SheetDrawing::part).toList(),
        14);
    paper.gap(3);
  }

  private static List<String> part(LoopSheet.Fitted part) {
    String serial =
        switch (part.content()) {
          case "none" -> "none fitted";
          case "unknown" -> "not known: read it";
          default -> part.serial();
        };
    String length = part.metres().isEmpty() ? "" : Length.ofMetres(part.metres()).inMetres();
    return List.of(
        part.slot(), serial, join(unusual(part), part.about(), part.note()), length, "", "");
  }

  /** The slot tells what usually sits there. */
  private static String unusual(LoopSheet.Fitted part) {
    boolean usual =
        part.slot().equals(part.kind())
            || (part.slot().startsWith("path") && part.kind().equals("extension cable"));
    return usual ? "" : part.kind();
  }

  private void targets() throws IOException {
    paper.fact("Balance", sheet.balance().isEmpty() ? "a length is not known" : sheet.balance());
    paper.fact(
        "Gap to set",
        sheet.targetGap().isEmpty()
            ? "no gap is approved for this point"
            : sheet.targetGap()
                + (sheet.expectedVolts().isEmpty()
                    ? ""
                    : "; expect " + sheet.expectedVolts() + " V there"));
    paper.fact("Expected from", sheet.basis());
    for (String channel : sheet.channels()) {
      paper.fact("Channel", channel);
    }
    for (String vote : sheet.votes()) {
      paper.fact("Voting", vote);
    }
    if (!sheet.mounting().isEmpty()) {
      paper.fact("Mounting", String.join("; ", sheet.mounting()));
    }
    for (String spare : sheet.spares()) {
      paper.fact("Put aside", spare);
    }
    for (String open : sheet.open()) {
      need(30);
      paper.fact("Open", open);
    }
    paper.gap(3);
  }

  private void readings() throws IOException {
    LoopSheet.Limits limits = sheet.limits();
    if (limits == null) {
      paper.line(
          PdfFace.SANS_BOLD,
          8.5,
          "No tolerance profile is known for this loop: no gaps and limits are given.");
      paper.gap(3);
      return;
    }
    paper.fact("Profile", limits.name());
    paper.fact(
        "Limits",
        "ISF %s: each reading lies %s below the one before. DSL within %s: the corridor below."
            .formatted(limits.isf(), limits.step(), limits.dsl()));
    paper.gap(2);
    need(14.4 * limits.readings().size() + 15);
    paper.table(
        List.of(
            "Gap, " + limits.unit(),
            "Gap",
            "Expect, V",
            "DSL corridor, V",
            "As found up",
            "As found down",
            "As left up",
            "As left down"),
        READING_WIDTHS,
        limits.readings().stream().map(SheetDrawing::reading).toList(),
        14.4);
    paper.gap(3);
  }

  private static List<String> reading(LoopSheet.Reading reading) {
    String corridor =
        reading.lowest().isEmpty() ? "" : reading.lowest() + " to " + reading.highest();
    return List.of(reading.gap(), reading.other(), reading.expected(), corridor, "", "", "", "");
  }

  private void others() throws IOException {
    need(105);
    paper.table(
        List.of(
            "",
            "V at rest",
            "Measured: day, time",
            "By",
            "Gap zero",
            "Standards used",
            "Signature"),
        List.of(46.0, 54.0, 92.0, 80.0, 57.0, 102.0, 80.0),
        List.of(
            List.of("As found", "", "", "", "", "", ""),
            List.of("As left", "", "", "", "", "", "")),
        16);
    paper.gap(3);
    paper.table(
        List.of(
            "Bypass, site no.",
            "Function",
            "Vote meanwhile",
            "Authorised by",
            "Answers for it",
            "On since",
            "Expires",
            "Off: when, by",
            "Proved by"),
        List.of(62.0, 58.0, 66.0, 57.0, 59.0, 49.0, 50.0, 60.0, 50.0),
        List.of(List.of("", "", "", "", "", "", "", "", "")),
        16);
    paper.gap(2);
    paper.fact(
        "Outcome",
        "[  ] done   [  ] nothing touched   [  ] not done   [  ] failed, because"
            + " ____________________________");
    paper.gap(3);
  }

  /** One under the other; side by side where only that keeps a loop on one page. */
  private void jobs() throws IOException {
    PdfSheet.Place half = PdfSheet.Place.HALVES.get(0);
    int first = leftColumn(half);
    double needed = Math.max(height(half, 0, first), height(half, first, sheet.jobs().size()));
    boolean fits = height(PdfSheet.Place.WHOLE, 0, sheet.jobs().size()) <= paper.room();
    if (fits || needed > paper.room()) {
      inOneColumn();
      return;
    }
    double top = paper.y();
    for (int i = 0; i < sheet.jobs().size(); i++) {
      if (i == first) {
        paper.moveTo(top);
      }
      LoopSheet.Job job = sheet.jobs().get(i);
      PdfSheet.Place place = PdfSheet.Place.HALVES.get(i < first ? 0 : 1);
      paper.gap(2);
      paper.heading(place, title(job));
      for (String step : steps(job)) {
        paper.tick(place, step);
      }
    }
    paper.moveTo(top - needed);
  }

  private static String title(LoopSheet.Job job) {
    return Text.capital(job.work()) + (job.isEmergent() ? " (emergent)" : "");
  }

  /** Whoever does emergent work reads first who found it and why. */
  private static List<String> steps(LoopSheet.Job job) {
    List<String> steps = new ArrayList<>();
    if (job.isEmergent()) {
      steps.add(Text.capital(job.emergent()) + ".");
    }
    steps.addAll(job.steps());
    return steps;
  }

  private void inOneColumn() throws IOException {
    for (LoopSheet.Job job : sheet.jobs()) {
      need(30);
      paper.gap(2);
      paper.heading(title(job));
      for (String step : steps(job)) {
        need(14);
        paper.tick(PdfSheet.Place.WHOLE, step);
      }
    }
  }

  /** How many jobs stand on the left, so that the longer column is as short as can be. */
  private int leftColumn(PdfSheet.Place half) {
    int all = sheet.jobs().size();
    return IntStream.rangeClosed(0, all)
        .boxed()
        .min(
            Comparator.comparingDouble(
                left -> Math.max(height(half, 0, left), height(half, left, all))))
        .orElse(0);
  }

  private double height(PdfSheet.Place place, int from, int until) {
    return sheet.jobs().subList(from, until).stream()
        .mapToDouble(job -> 2 + paper.ticksHeight(place, steps(job)))
        .sum();
  }
}
