package loopwright.loop;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.KnownLength;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.problem.Text;
import loopwright.units.Length;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** Words for pages: lengths in both units, findings as rows, how long ago. */
final class Shown {
  private Shown() {}

  /** A finding as a table row. */
  record Row(
      String rule, String message, String remedy, String expect, String basis, String verdict) {}

  static List<Row> rows(Judgement judgement) {
    return judgement.findings().stream().map(Shown::row).toList();
  }

  private static Row row(Finding finding) {
    return new Row(
        Text.capital(finding.rule().name()),
        finding.message(),
        finding.remedy(),
        finding.expect(),
        "Basis: " + finding.basis(),
        finding.verdict().word());
  }

  /** Both units, the reader's first. */
  static String length(@Nullable Length length, UnitsShown units) {
    return length == null ? "not known" : units.both(length);
  }

  static String balance(@Nullable Length balance, UnitsShown units) {
    return balance == null ? "" : units.signed(balance);
  }

  static String length(@Nullable KnownLength length, UnitsShown units) {
    return length == null
        ? "not known"
        : length(length.length(), units) + ", " + length.evidence().phrase();
  }

  /** Maker, model and family. */
  static String about(PartView part) {
    return String.join(
            " ",
            text(part.name().maker()),
            text(part.name().model()),
            part.family() == null ? "" : "· family " + part.family())
        .strip()
        .replaceAll("\\s+", " ");
  }

  private static String text(@Nullable String text) {
    return text == null ? "" : text;
  }

  /** What stands in a slot, in words. */
  static String words(Slot slot) {
    return slot.part()
        .map(part -> part.name().isIdentified() ? part.name().text() : "fitted, not identified")
        .orElse(slot == Slot.NONE_FITTED ? "none fitted" : "not known");
  }

  /** Roughly how long ago: {@code 8 months}, {@code 12 days}, {@code 6 h}. */
  static String ago(@Nullable Instant since, Instant now) {
    if (since == null) {
      return "";
    }
    Duration time = Duration.between(since, now);
    if (time.toDays() >= 730) {
      return time.toDays() / 365 + " years";
    }
    if (time.toDays() >= 60) {
      return time.toDays() / 30 + " months";
    }
    if (time.toDays() >= 2) {
      return time.toDays() + " days";
    }
    return Math.max(0, time.toHours()) + " h";
  }
}
