package loopwright.symptom;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import loopwright.cause.Baseline;
import loopwright.cause.Diagnosis;
import loopwright.cause.ImpliedLength;
import loopwright.cause.Observation;
import loopwright.cause.RankedCause;
import loopwright.cause.Told;
import loopwright.problem.Text;
import loopwright.units.Length;
import loopwright.units.Unit;
import loopwright.web.UnitsShown;

/** A diagnosis in words and rows, for the page. Rounded here and nowhere before. */
record DiagnosisShown(
    String headline,
    String measured,
    String before,
    String gap,
    String implied,
    String next,
    String nextBits,
    List<String> advice,
    List<String> warnings,
    List<String> basis,
    List<CauseRow> causes,
    List<LengthRow> lengths,
    List<MeasurementRow> measurements) {
  private static final double WORTH_TELLING = 0.01;
  private static final double WORTH_SEARCHING = 0.05;
  private static final int MOST_CAUSES = 8;
  private static final int MOST_MEASUREMENTS = 4;

  /** A cause, measured against expected. */
  record CauseRow(
      String words, String probability, String volts, String sensitivity, String explanation) {}

  /** A total length and how it could have come about. */
  record LengthRow(String length, String probability, List<CulpritSearch.Way> ways) {}

  /** What could be measured. */
  record MeasurementRow(String sentence, String bits) {}

  static DiagnosisShown of(
      TypedSymptom.Found found, Optional<CulpritSearch> search, UnitsShown units) {
    Diagnosis diagnosis = found.diagnosis();
    Observation seen = diagnosis.situation().seen();
    Baseline baseline = diagnosis.situation().baseline();
    ImpliedLength implied = diagnosis.impliedLength();
    return new DiagnosisShown(
        headline(diagnosis.first()),
        Told.volts(seen.volts())
            + ", "
            + Told.sensitivity(seen.sensitivity())
            + ", at the "
            + seen.at().label(),
        Told.volts(baseline.setVolts())
            + ", "
            + Told.sensitivity(baseline.setSensitivity())
            + ", at "
            + Told.gap(baseline.setGapMicrometres()),
        Told.gap(diagnosis.gapMicrometres())
            + ", give or take "
            + Told.gap(diagnosis.gapUncertainty()),
        Told.metres(implied.metres())
            + "; between "
            + Told.metres(implied.lowMetres())
            + " and "
            + Told.metres(implied.highMetres())
            + " with 95 %",
        diagnosis.next().measurement().sentence(),
        bits(diagnosis.next().bits()),
        diagnosis.advice(),
        diagnosis.warnings(),
        diagnosis.basis(),
        diagnosis.causes().stream()
            .filter(cause -> cause.probability() >= WORTH_TELLING)
            .limit(MOST_CAUSES)
            .map(cause -> row(diagnosis, cause, units))
            .toList(),
        lengths(found, search),
        diagnosis.measurements().stream()
            .skip(1)
            .limit(MOST_MEASUREMENTS)
            .map(each -> new MeasurementRow(each.measurement().sentence(), bits(each.bits())))
            .toList());
  }

  private static String headline(RankedCause first) {
    return Text.capital(first.inWords()) + ": " + Told.percent(first.probability());
  }

  private static String bits(double bits) {
    return String.format(Locale.ROOT, "%.2f bit", bits);
  }

  private static CauseRow row(Diagnosis diagnosis, RankedCause cause, UnitsShown units) {
    return new CauseRow(
        cause.inWords(),
        Told.percent(cause.probability()),
        Told.volts(cause.predictedVolts()),
        sensitivity(cause.predictedSensitivity(), units),
        diagnosis.reason(cause));
  }

  /** In the reader's unit: the column is narrow. */
  private static String sensitivity(double millivoltsPerMicrometre, UnitsShown units) {
    return units.metric()
        ? String.format(Locale.ROOT, "%.3f mV/µm", millivoltsPerMicrometre)
        : String.format(
            Locale.ROOT,
            "%.1f mV/mil",
            Unit.MILLIVOLT_PER_MIL.fromCanonical(millivoltsPerMicrometre));
  }

  private static List<LengthRow> lengths(TypedSymptom.Found found, Optional<CulpritSearch> search) {
    return IntStream.range(0, found.lengths().typed().size())
        .mapToObj(
            i -> {
              Length length = new Length(found.lengths().metres().get(i));
              double probability =
                  found
                      .diagnosis()
                      .lengthProbabilities()
                      .getOrDefault(found.lengths().metres().get(i), 0.0);
              return new LengthRow(
                  found.lengths().typed().get(i) + " m",
                  Told.percent(probability),
                  probability < WORTH_SEARCHING
                      ? List.of()
                      : search.map(each -> each.ways(length)).orElse(List.of()));
            })
        .toList();
  }
}
