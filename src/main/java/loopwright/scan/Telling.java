package loopwright.scan;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.loop.PartSet;
import loopwright.loop.Proposed;
import loopwright.matching.Finding;
import loopwright.matching.PartKind;
import loopwright.matching.Verdict;
import loopwright.register.Component;
import loopwright.register.NominalLength;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.Whereabouts;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Puts the answer into the words of the page. */
final class Telling {
  private final ScanCheck check;
  private final Fetching fetching;
  private final PartSearch search;
  private final Proposed proposed;

  Telling(ScanCheck check, Fetching fetching, PartSearch search, Proposed proposed) {
    this.check = check;
    this.fetching = fetching;
    this.search = search;
    this.proposed = proposed;
  }

  /** A scanned part. */
  record PartLine(
      long id,
      String kind,
      String label,
      String length,
      String about,
      String where,
      boolean wrong,
      String removeHref) {}

  /** Something to fetch. */
  record FetchLine(
      long id, String what, String label, String shelf, String others, String insteadOf) {}

  /**
   * What the page says.
   *
   * @param word the verdict, or how many are scanned while more are needed
   * @param style of the word
   * @param missing what is still to be scanned, in words; empty when nothing is
   */
  record Told(
      String word,
      String style,
      String headline,
      List<String> remedies,
      String missing,
      @Nullable String noCableHref,
      List<PartLine> parts,
      List<FetchLine> fetch,
      boolean nothingOnShelf,
      @Nullable String drawing,
      List<?> findings,
      String loop,
      boolean chosen,
      String loopHref,
      @Nullable String survey,
      @Nullable String assembly,
      @Nullable String concession,
      @Nullable String benchCurve,
      @Nullable String kit,
      @Nullable String stoodInCurve) {}

  @Nullable Told told(DSLContext sql, Scan scan, Bench bench, UnitsShown units) {
    if (bench.parts().isEmpty()) {
      return null;
    }
    ScanCheck.Answer answer = check.answer(sql, scan, bench);
    List<Fetching.Fetch> fetch = fetching.fetch(sql, answer);
    boolean complete = answer.missing().isEmpty();
    boolean refused = answer.verdict() == Verdict.REFUSED;
    Verdict shown = answer.verdict();
    String loop = answer.loop() == null ? "" : answer.loop().tag();
    String href = "/loops/" + PathSegment.of(loop);
    String query = "?" + proposed.query(sql, answer.chain());
    return new Told(
        complete || refused ? shown.word() : scannedOf(answer),
        complete || refused ? shown.word().replace(' ', '-') : "pending",
        headline(answer),
        remedies(answer),
        missing(answer.missing()),
        noCable(scan, answer),
        lines(sql, scan, answer, units),
        fetch.stream().map(one -> line(one, units)).toList(),
        complete && answer.blocked() && fetch.isEmpty(),
        complete ? Proposed.drawing(answer.judged()) : null,
        complete || refused ? Proposed.findings(answer.judged()) : List.of(),
        loop,
        answer.chosen(),
        href,
        complete ? href + "/survey" + query : null,
        complete && !answer.blocked() ? href + "/assembly" + query : null,
        complete && refused ? href + "/concession" + query : null,
        complete ? of("/bench/curve", answer) : null,
        complete ? of("/kits/new", answer) : null,
        complete && answer.chosen() && check.differsFromFitted(sql, answer)
            ? of(href + "/curve", answer)
            : null);
  }

  /** A page about these very parts. */
  private static @Nullable String of(String page, ScanCheck.Answer answer) {
    return PartSet.of(answer.chain())
        .map(PartSet::fingerprint)
        .map(set -> page + "?set=" + URLEncoder.encode(set, StandardCharsets.UTF_8))
        .orElse(null);
  }

  private static String scannedOf(ScanCheck.Answer answer) {
    int scanned = answer.bench().parts().size();
    return scanned + " of " + (scanned + answer.missing().size());
  }

  private static String headline(ScanCheck.Answer answer) {
    Finding worst = answer.judged().judgement().findings().get(0);
    Verdict verdict = answer.verdict();
    if (!answer.missing().isEmpty() && verdict != Verdict.REFUSED) {
      return "";
    }
    return switch (verdict) {
      case MATCHES -> "These parts belong together.";
      case ATTENTION ->
          answer.blocked() ? worst.message() : "They may be fitted together. " + worst.message();
      default -> worst.message();
    };
  }

  private static List<String> remedies(ScanCheck.Answer answer) {
    return answer.judged().judgement().findings().stream()
        .filter(finding -> finding.verdict() == answer.verdict())
        .filter(finding -> answer.missing().isEmpty() || finding.verdict() == Verdict.REFUSED)
        .map(Finding::remedy)
        .filter(remedy -> !remedy.isEmpty())
        .distinct()
        .toList();
  }

  private static String missing(List<Bench.Place> missing) {
    return missing.stream().map(place -> place.usual().word()).collect(Collectors.joining(", "));
  }

  private static @Nullable String noCable(Scan scan, ScanCheck.Answer answer) {
    return answer.missing().contains(Bench.Place.PATH) ? scan.withoutCable(true).href() : null;
  }

  private List<PartLine> lines(
      DSLContext sql, Scan scan, ScanCheck.Answer answer, UnitsShown units) {
    Map<Long, PartRow> rows =
        search.rows(sql, answer.bench().parts()).stream()
            .collect(Collectors.toMap(row -> row.part().id().number(), row -> row));
    List<PartLine> lines = new ArrayList<>();
    for (Component part : answer.bench().parts()) {
      PartRow row = rows.get(part.id().number());
      if (row != null) {
        lines.add(line(scan, row, units));
      }
    }
    return lines;
  }

  private static PartLine line(Scan scan, PartRow row, UnitsShown units) {
    Component part = row.part();
    boolean usable = part.facts().conditionReason().isEmpty();
    return new PartLine(
        part.id().number(),
        part.kind().word(),
        part.label(),
        length(part, units),
        Stream.of(
                part.details().identity().maker() + " " + part.details().identity().model(),
                row.family())
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining(" · ")),
        where(row),
        !usable,
        scan.without(part.id().number()).href());
  }

  private static String length(Component part, UnitsShown units) {
    NominalLength known = part.facts().length();
    if (known == null) {
      return "length not known";
    }
    String words = units.both(known.length());
    String evidence = known.evidence().proves() ? "" : ", " + known.evidence().phrase();
    boolean system = part.kind().place() == PartKind.Place.DRIVER_SLOT;
    return (system ? "for " : "") + words + evidence;
  }

  /** Where it is on record, and why it may not be used. */
  private static String where(PartRow row) {
    Component part = row.part();
    String fitted =
        row.now().stream().map(Whereabouts::tag).distinct().collect(Collectors.joining(", "));
    String reason = part.facts().conditionReason();
    return Stream.of(
            part.state().word() + (reason.isEmpty() ? "" : ": " + reason),
            fitted.isEmpty() ? "" : "on record at " + fitted,
            fitted.isEmpty() ? part.facts().shelf().inWords() : "")
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining(" · "));
  }

  private static FetchLine line(Fetching.Fetch fetch, UnitsShown units) {
    Component part = fetch.part();
    String shelf = part.facts().shelf().inWords();
    return new FetchLine(
        part.id().number(),
        part.kind().word() + " " + length(part, units),
        part.label(),
        shelf.isEmpty() ? "shelf not recorded" : shelf,
        fetch.others() == 0 ? "" : fetch.others() + " more like it",
        fetch.insteadOf() == null ? "" : "instead of " + fetch.insteadOf().label());
  }

  /** Kind, maker and model, for telling parts of one serial apart. */
  static String about(Component part) {
    return part.kind().word()
        + ", "
        + part.details().identity().maker()
        + " "
        + part.details().identity().model();
  }
}
