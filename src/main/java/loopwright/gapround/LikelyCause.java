package loopwright.gapround;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import loopwright.cause.Baseline;
import loopwright.cause.CauseFinder;
import loopwright.cause.Diagnosis;
import loopwright.cause.FittedLengths;
import loopwright.cause.Observation;
import loopwright.cause.Situation;
import loopwright.cause.Told;
import loopwright.matching.FamilyView;
import loopwright.matching.LengthSum;
import loopwright.matching.LoopView;
import loopwright.matching.NominalLine;
import loopwright.units.Length;

/**
 * What a gap voltage alone lets one suspect. The sensitivity is put in as the baseline's own with
 * an uncertainty so wide that it says next to nothing: the answer can only be a first guess, and
 * says which measurement decides.
 */
final class LikelyCause {
  private static final double SAYS_NOTHING = 0.5;
  private static final int MOST = 2;

  private LikelyCause() {}

  /** In words; empty where the loop's length or family isn't known, or nothing compares. */
  static Optional<String> of(Compared loop, LoopView view) {
    Length system = LengthSum.of(view).tunedFor();
    Optional<NominalLine> line = view.family().map(FamilyView::line);
    if (system == null || line.isEmpty() || loop.before().isEmpty()) {
      return Optional.empty();
    }
    double volts = loop.now().volts().canonical();
    double before = loop.before().get().volts().canonical();
    if (!(before < -0.5) || !(volts < 0)) {
      return Optional.empty();
    }
    double slope = line.get().millivoltsPerMicrometre();
    double gap = line.get().gapAt(before);
    Baseline baseline = Baseline.line(Math.max(1, gap), before, slope);
    Observation seen =
        new Observation(
            volts,
            slope,
            Observation.USUAL_VOLTS,
            SAYS_NOTHING,
            OptionalDouble.empty(),
            Optional.empty(),
            loop.now().tappedAt());
    return Optional.of(
        words(
            CauseFinder.find(
                Situation.of(system, FittedLengths.usual(system).metres(), baseline, seen))));
  }

  private static String words(Diagnosis diagnosis) {
    return diagnosis.causes().stream()
            .limit(MOST)
            .map(cause -> cause.inWords() + " " + Told.percent(cause.probability()))
            .collect(Collectors.joining(", "))
        + "; take the sensitivity to tell.";
  }
}
