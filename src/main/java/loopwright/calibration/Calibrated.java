package loopwright.calibration;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A calibration as it is kept.
 *
 * @param number by which people call it
 * @param fingerprint of the combination it belongs to
 * @param setup whether those parts were what was fitted at the point
 * @param point at which it was taken; null for a bench set
 * @param tag of that point
 * @param verdict {@code conforms} or {@code does not conform}; null without a curve
 * @param noCurveReason null with a curve
 * @param analysisVersion of the method that gave the numbers
 * @param profileVersion that judged it; null without a curve
 * @param findings as told then
 */
public record Calibrated(
    long id,
    String number,
    String fingerprint,
    Setup setup,
    @Nullable Long point,
    @Nullable String tag,
    Stage stage,
    Instant measuredAt,
    String performedBy,
    String zero,
    String targetAlloy,
    @Nullable String verdict,
    @Nullable String noCurveReason,
    @Nullable String analysisVersion,
    @Nullable Long profileVersion,
    Numbers numbers,
    List<String> findings,
    String origin,
    String enteredBy,
    Instant enteredAt,
    String reason) {

  /**
   * What the analysis gave; empty without a curve. mV/µm, µm, percent, V.
   *
   * @param worstIsfPercent departure of the worst increment from nominal, with its sign
   */
  public record Numbers(
      OptionalDouble asf,
      OptionalDouble slope,
      OptionalDouble maxDsl,
      OptionalDouble worstIsfPercent,
      OptionalDouble midVolts,
      @Nullable String isfTrend) {}

  /** Where it was taken, in words: a tag, a tag where a part stood in, or the bench. */
  public String place() {
    return switch (setup) {
      case BENCH -> "bench";
      case STOOD_IN -> tag + ", part stood in";
      case FITTED -> String.valueOf(tag);
    };
  }

  public boolean hasCurve() {
    return verdict != null;
  }

  /** The verdict, or {@code no curve}. */
  public String outcome() {
    return verdict == null ? CalibrationStore.NO_CURVE : verdict;
  }
}
