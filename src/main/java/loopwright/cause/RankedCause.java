package loopwright.cause;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A cause with what the numbers make of it.
 *
 * @param cause which
 * @param probability after measuring, among all causes
 * @param fittedLength the likeliest total length under it, m, as given; empty where it isn't one
 *     that is known
 * @param regapped is it likelier that the probe was moved until the voltage looked right?
 * @param predictedVolts what the likeliest way in which it can hold would show, V
 * @param predictedSensitivity mV/µm
 * @param gapMicrometres the real gap under it, mean
 * @param factor on the curve at the set gap under it, mean
 */
public record RankedCause(
    Cause cause,
    double probability,
    Optional<BigDecimal> fittedLength,
    boolean regapped,
    double predictedVolts,
    double predictedSensitivity,
    double gapMicrometres,
    double factor) {

  /** {@code over length, 5.5 m fitted, probe moved afterwards}. */
  public String inWords() {
    String length = fittedLength.map(BigDecimal::toPlainString).orElse("");
    return cause.label()
        + (cause.isWrongLength() ? ", " + length + " m fitted" : "")
        + (regapped ? ", probe moved afterwards" : "");
  }
}
