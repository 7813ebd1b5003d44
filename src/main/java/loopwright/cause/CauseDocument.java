package loopwright.cause;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A diagnosis as data, for the command line and {@code /api/cause}. Volts in V, negative;
 * sensitivities in mV/µm; gaps in µm; lengths in m.
 *
 * @param causes likeliest first; their probabilities add up to 1
 * @param lengthProbabilities of each length given, under the text it was given as: that this total
 *     is fitted, whatever else is wrong
 * @param lengthFactor k by which a wrong length multiplies the curve, if it is the length
 * @param impliedLengthMetres median, if it is the length
 * @param gapMicrometres the real gap over all causes
 * @param nextMeasurement the one that would tell most
 * @param measurements every one, by falling expected information
 * @param weights which weights of causes before measuring it rests on
 */
public record CauseDocument(
    List<CauseFields> causes,
    Map<String, Double> lengthProbabilities,
    double lengthFactor,
    double lengthFactorStandardUncertainty,
    double impliedLengthMetres,
    List<Double> impliedLengthInterval95,
    double gapMicrometres,
    double gapMicrometresStandardUncertainty,
    String nextMeasurement,
    List<Measurement> measurements,
    List<String> warnings,
    String weights) {

  /** One cause. */
  public record CauseFields(
      String cause,
      double probability,
      @Nullable BigDecimal fittedLengthMetres,
      boolean regapped,
      String explanation,
      double predictedVolts,
      double predictedSensitivity) {

    static CauseFields of(Diagnosis diagnosis, RankedCause cause) {
      return new CauseFields(
          cause.cause().label(),
          cause.probability(),
          cause.fittedLength().orElse(null),
          cause.regapped(),
          diagnosis.explain(cause),
          cause.predictedVolts(),
          cause.predictedSensitivity());
    }
  }

  /** One possible measurement. */
  public record Measurement(String measurement, double expectedInformationBits) {}

  /**
   * @param remarks that stand before the diagnosis's own warnings
   */
  public static CauseDocument of(Diagnosis diagnosis, FittedLengths lengths, List<String> remarks) {
    ImpliedLength implied = diagnosis.impliedLength();
    return new CauseDocument(
        diagnosis.causes().stream().map(cause -> CauseFields.of(diagnosis, cause)).toList(),
        probabilities(diagnosis, lengths),
        implied.factor(),
        implied.factorUncertainty(),
        implied.metres(),
        List.of(implied.lowMetres(), implied.highMetres()),
        diagnosis.gapMicrometres(),
        diagnosis.gapUncertainty(),
        diagnosis.next().measurement().sentence(),
        diagnosis.measurements().stream()
            .map(each -> new Measurement(each.measurement().sentence(), each.bits()))
            .toList(),
        Stream.concat(remarks.stream(), diagnosis.warnings().stream()).toList(),
        diagnosis.situation().priors().origin());
  }

  private static Map<String, Double> probabilities(Diagnosis diagnosis, FittedLengths lengths) {
    Map<String, Double> byText = new LinkedHashMap<>();
    for (int i = 0; i < lengths.typed().size(); i++) {
      byText.put(
          lengths.typed().get(i),
          diagnosis.lengthProbabilities().getOrDefault(lengths.metres().get(i), 0.0));
    }
    return byText;
  }
}
