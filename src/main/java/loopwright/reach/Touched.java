package loopwright.reach;

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
 */
record Touched(Calibrated record, Optional<CurveResult> kept, Optional<CurveResult> without) {

  /** First those whose verdict is another one, then those whose largest deviation moves most. */
  static final Comparator<Touched> WORST_FIRST =
      Comparator.comparing((Touched t) -> !t.flips())
          .thenComparing(t -> -t.moved())
          .thenComparing(t -> t.record().number());

  static Touched of(Evidence evidence, StandardError error) {
    Optional<Curve> corrected = evidence.curve().flatMap(curve -> corrected(curve, error));
    return new Touched(
        evidence.record(),
        evidence.result(),
        corrected.flatMap(
            curve -> evidence.judgedBy().map(by -> CurveAnalysis.of(curve, by.profile()))));
  }

  /** Two gaps may fall together where an error is large. */
  private static Optional<Curve> corrected(Curve curve, StandardError error) {
    try {
      return Optional.of(error.without(curve));
    } catch (IllegalArgumentException nothingLeft) {
      return Optional.empty();
    }
  }

  boolean flips() {
    return !kept.map(CurveResult::verdict).equals(without.map(CurveResult::verdict));
  }

  /** What is said of it without the error that was not said of it as kept. */
  List<String> saidAnew() {
    List<String> before = without.isEmpty() ? List.of() : sentences(kept);
    return sentences(without).stream().filter(sentence -> !before.contains(sentence)).toList();
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
