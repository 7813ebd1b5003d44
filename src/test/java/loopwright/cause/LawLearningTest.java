package loopwright.cause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import loopwright.units.Length;
import org.junit.jupiter.api.Test;

/** What confirmed lengths make of the law. Readings are synthetic, made by a law of n = 1.5. */
class LawLearningTest {
  private static final Baseline LINE = Baseline.line(1270, -9.0, 7.953);

  /** A loop with k = (5/fitted)^1.5, c = 0.3 per mm, the probe where it was set. */
  private static ProvedLength of(String fitted) {
    double lnRatio = Math.log(5 / Double.parseDouble(fitted));
    Distortion true15 = Distortion.along(1.5 * lnRatio, 0.3);
    return new ProvedLength(
        Length.ofMetres("5"),
        Length.ofMetres(fitted),
        LINE,
        Observation.of(true15.volts(LINE, 1270), true15.sensitivity(LINE, 1270)));
  }

  @Test
  void withoutEvidenceThePriorStays() {
    assertThat(LawLearning.learnt(LengthLaw.unproved(), List.of())).isEqualTo(LengthLaw.unproved());
  }

  @Test
  void oneCaseMovesTheExponentTowardTheTruthAndNarrowsIt() {
    LengthLaw one = LawLearning.learnt(LengthLaw.unproved(), List.of(of("5.5")));
    assertThat(one.n()).isBetween(1.15, 1.6);
    assertThat(one.nUncertainty()).isLessThan(0.3);
  }

  @Test
  void manyCasesComeNearTheTruthButKeepAFloor() {
    LengthLaw many = LawLearning.learnt(LengthLaw.unproved(), Collections.nCopies(12, of("5.5")));
    assertThat(many.n()).isCloseTo(1.5, within(0.15));
    assertThat(many.nUncertainty()).isBetween(0.06, 0.12);
    LengthLaw wider = LawLearning.learnt(LengthLaw.unproved(), List.of(of("5.5"), of("4.5")));
    assertThat(wider.nUncertainty()).isGreaterThan(many.nUncertainty());
  }

  /** The product of so many densities is no number any more. */
  @Test
  void hundredsOfCasesAreStillALaw() {
    LengthLaw hundreds =
        LawLearning.learnt(LengthLaw.unproved(), Collections.nCopies(250, of("5.5")));
    assertThat(hundreds.n()).isCloseTo(1.5, within(0.15));
    assertThat(hundreds.nUncertainty()).isEqualTo(0.06);
  }

  @Test
  void whatEachCaseDoesIsWhatTheOthersLeave() {
    List<ProvedLength> all = List.of(of("5.5"), of("4.5"), of("6.0"));
    assertThat(LawLearning.of(LengthLaw.unproved(), all).without(1))
        .isEqualTo(LawLearning.learnt(LengthLaw.unproved(), List.of(of("5.5"), of("6.0"))));
  }

  @Test
  void aLearntLawNarrowsTheImpliedLength() {
    Observation seen = of("5.5").seen();
    List<java.math.BigDecimal> lengths = FittedLengths.usual(Length.ofMetres("5")).metres();
    LengthLaw learnt =
        LawLearning.learnt(LengthLaw.unproved(), List.of(of("5.5"), of("4.5"), of("6.0")));
    ImpliedLength before =
        CauseFinder.find(Situation.of(Length.ofMetres("5"), lengths, LINE, seen)).impliedLength();
    ImpliedLength after =
        CauseFinder.find(
                new Situation(
                    Length.ofMetres("5"), lengths, LINE, seen, learnt, Priors.usual(seen.at())))
            .impliedLength();
    assertThat(after.highMetres() - after.lowMetres())
        .isLessThan(before.highMetres() - before.lowMetres());
    assertThat(5.5).isBetween(after.lowMetres(), after.highMetres());
  }
}
