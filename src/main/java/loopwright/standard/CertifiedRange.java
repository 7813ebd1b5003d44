package loopwright.standard;

import java.math.BigDecimal;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * What a certificate says of one range, as typed there. Outputs count by magnitude, so ends are
 * zero or more.
 *
 * @param number in the certificate, from 1
 * @param correction to be added to a reading
 * @param uncertainty expanded, for the certificate's coverage factor; each reading its own
 * @param scalePercent expanded relative uncertainty that all readings share, percent
 * @param resolution smallest step shown, where the uncertainty does not hold it already
 */
public record CertifiedRange(
    int number,
    Reported low,
    Reported high,
    Reported correction,
    Reported uncertainty,
    Optional<Percent> scalePercent,
    Optional<Reported> resolution) {
  private static final BigDecimal MOST_PERCENT = BigDecimal.valueOf(50);

  /**
   * A share as typed.
   *
   * @param amount percent
   */
  public record Percent(String typed, BigDecimal amount) {

    static Percent read(String typed) {
      return Numbers.read(typed)
          .map(amount -> new Percent(typed.strip(), amount))
          .orElseThrow(() -> new NumberFormatException(typed));
    }
  }

  /** Refuses reversed and negative ranges and uncertainties that can't be. */
  public CertifiedRange {
    if (low.amount().signum() < 0) {
      throw new Refused(StandardProblem.RANGE_NEGATIVE, number, low);
    }
    if (low.amount().compareTo(high.amount()) >= 0) {
      throw new Refused(StandardProblem.RANGE_REVERSED, number, low, high);
    }
    if (uncertainty.amount().signum() <= 0) {
      throw new Refused(StandardProblem.UNCERTAINTY, number, uncertainty);
    }
    if (uncertainty.amount().compareTo(high.amount().subtract(low.amount())) >= 0) {
      throw new Refused(StandardProblem.LARGE_UNCERTAINTY, number, uncertainty);
    }
    refuse(number, scalePercent);
    if (resolution.filter(step -> step.amount().signum() < 0).isPresent()) {
      throw new Refused(StandardProblem.RESOLUTION, number, resolution.get());
    }
  }

  private static void refuse(int number, Optional<Percent> scale) {
    scale
        .filter(s -> s.amount().signum() < 0 || s.amount().compareTo(MOST_PERCENT) > 0)
        .ifPresent(
            s -> {
              throw new Refused(StandardProblem.SCALE, number, s.typed());
            });
  }

  public Unit unit() {
    return low.unit();
  }

  /**
   * @param magnitude µm, or V without sign
   */
  public boolean holds(double magnitude) {
    return magnitude >= low.canonical() && magnitude <= high.canonical();
  }

  /** {@code 0 to 2500 µm}, as typed. */
  public String ends() {
    return low.typed() + " to " + high;
  }

  boolean overlaps(CertifiedRange other) {
    return low.canonical() < other.high.canonical() && other.low.canonical() < high.canonical();
  }
}
