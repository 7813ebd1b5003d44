package loopwright.gapround;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.cause.Baseline;
import loopwright.cause.CauseFinder;
import loopwright.cause.Diagnosis;
import loopwright.cause.FittedLengths;
import loopwright.cause.LengthLaw;
import loopwright.cause.Observation;
import loopwright.cause.Situation;
import loopwright.cause.Told;
import loopwright.cause.Weights;
import loopwright.matching.LengthSum;
import loopwright.matching.LoopView;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;

/**
 * What a gap voltage alone lets one suspect. The sensitivity is put in as the baseline's own with
 * an uncertainty so wide that it says next to nothing: the answer can only be a first guess, and
 * says which measurement decides.
 */
final class LikelyCause {
  private static final double SAYS_NOTHING = 0.5;
  private static final int MOST = 2;

  private LikelyCause() {}

  /**
   * @param law of the family, as far as confirmed lengths have narrowed it
   * @param weights of the causes before measuring
   * @return in words; empty where the loop's length or scale factor isn't known, or nothing
   *     compares
   */
  static Optional<String> of(Compared loop, LoopView view, LengthLaw law, Weights weights) {
    Length system = LengthSum.of(view).tunedFor();
    OptionalDouble nominal = slope(view);
    if (system == null || nominal.isEmpty() || loop.before().isEmpty()) {
      return Optional.empty();
    }
    double volts = loop.now().volts().canonical();
    double before = loop.before().get().volts().canonical();
    if (!(before < -0.5) || !(volts < 0)) {
      return Optional.empty();
    }
    double slope = nominal.getAsDouble();
    Baseline baseline = Baseline.line(-1000 * before / slope, before, slope);
    Observation seen =
        new Observation(
            volts,
            slope,
            Observation.USUAL_VOLTS,
            SAYS_NOTHING,
            OptionalDouble.empty(),
            Optional.empty(),
            loop.now().tappedAt());
    Situation situation =
        new Situation(
            system,
            FittedLengths.usual(system).metres(),
            baseline,
            seen,
            law,
            weights.at(seen.at()));
    return Optional.of(words(situation));
  }

  /** mV/µm that the family declares; the gap is not needed, only how far it moved. */
  private static OptionalDouble slope(LoopView view) {
    return view.family().stream()
        .flatMap(family -> Stream.ofNullable(family.scaleFactor()))
        .mapToDouble(ScaleFactor::millivoltsPerMicrometre)
        .findFirst();
  }

  private static String words(Situation situation) {
    try {
      return words(CauseFinder.find(situation));
    } catch (Refused ruledOut) {
      return ruledOut.getMessage();
    }
  }

  private static String words(Diagnosis diagnosis) {
    return diagnosis.causes().stream()
            .limit(MOST)
            .map(cause -> cause.inWords() + " " + Told.percent(cause.probability()))
            .collect(Collectors.joining(", "))
        + "; take the sensitivity to tell.";
  }
}
