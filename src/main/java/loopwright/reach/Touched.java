package loopwright.reach;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Evidence;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;

/**
 * A calibration that a standard's error touched, with its result as kept and without the error.
 * Both by the version that judged it, simple acceptance.
 *
 * @param without empty where there is no curve, or none is left without the error
 * @param paths by which the error came to it
 * @param whyNot why nothing could be worked out; empty where it was
 */
record Touched(
    Calibrated record,
    Optional<CurveResult> kept,
    Optional<CurveResult> without,
    List<String> paths,
    String whyNot) {

  /**
   * First those whose verdict is another one, then those of which nobody can tell, then those whose
   * largest deviation moves most.
   */
  static final Comparator<Touched> WORST_FIRST =
      Comparator.comparing((Touched t) -> !t.flips())
          .thenComparing(Touched::isComputed)
          .thenComparing(t -> -t.moved())
          .thenComparing(t -> t.record().number());

  Touched {
    paths = List.copyOf(paths);
  }

  static Touched of(Evidence evidence, StandardError error, List<String> paths) {
    Optional<Curve> corrected = evidence.curve().flatMap(curve -> corrected(curve, error));
    return new Touched(
        evidence.record(),
        evidence.result(),
        corrected.flatMap(
            curve -> evidence.judgedBy().map(by -> CurveAnalysis.of(curve, by.profile()))),
        paths,
        "");
  }

  static Touched only(Evidence evidence, List<String> paths, String whyNot) {
    return new Touched(evidence.record(), evidence.result(), Optional.empty(), paths, whyNot);
  }

  /** Two gaps may fall together where an error is large. */
  private static Optional<Curve> corrected(Curve curve, StandardError error) {
    try {
      return Optional.of(error.without(curve));
    } catch (IllegalArgumentException nothingLeft) {
      return Optional.empty();
    }
  }

  boolean isComputed() {
    return whyNot.isEmpty();
  }

  boolean flips() {
    return isComputed()
        && !kept.map(CurveResult::verdict).equals(without.map(CurveResult::verdict));
  }

  /** What is said of it without the error that was not said of it as kept. */
  List<String> saidAnew() {
    List<String> before = without.isEmpty() ? List.of() : sentences(kept);
    return sentences(without).stream().filter(sentence -> !before.contains(sentence)).toList();
  }

  /** The verdict without the error, in its word. */
  String verdictWithout() {
    return without
        .map(result -> result.verdict().label())
        .orElse(kept.isPresent() ? "no curve" : record.outcome());
  }

  /** For an impact review: how it was touched, and what it would say. */
  List<String> toldOf(String standard, String error) {
    List<String> told = new ArrayList<>();
    told.add("%s was wrong: %s.".formatted(standard, error));
    told.add("It came to this record by " + String.join("; ", paths) + ".");
    told.add("Kept as: %s. Without that error: %s.".formatted(record.outcome(), verdictWithout()));
    told.addAll(saidAnew());
    return told;
  }

  private static List<String> sentences(Optional<CurveResult> result) {
    return result.map(r -> r.findings().stream().map(Finding::sentence).toList()).orElse(List.of());
  }

  private double moved() {
    return kept.isPresent() && without.isPresent()
        ? Math.abs(without.get().maxDsl() - kept.get().maxDsl())
        : 0;
  }
}
