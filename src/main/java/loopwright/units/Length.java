package loopwright.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A length of lead or cable, or a difference of such lengths, exact in metres: 15 ft is 4.572 m and
 * three such cables are 13.716 m, not 13.716000000000001 m. Two lengths are equal when they are the
 * same number, however it was written.
 */
public record Length(BigDecimal metres) implements Comparable<Length> {
  public static final Length ZERO = new Length(BigDecimal.ZERO);

  /** Canonical: trailing zeros are dropped so that 4.50 equals 4.5. */
  public Length {
    metres = metres.signum() == 0 ? BigDecimal.ZERO : metres.stripTrailingZeros();
  }

  public static Length ofMetres(String metres) {
    return new Length(new BigDecimal(metres));
  }

  public static Length of(Reported reported) {
    return new Length(reported.unit().toCanonical(reported.amount()));
  }

  public Length plus(Length other) {
    return new Length(metres.add(other.metres));
  }

  public Length minus(Length other) {
    return new Length(metres.subtract(other.metres));
  }

  public Length abs() {
    return new Length(metres.abs());
  }

  public boolean isZero() {
    return metres.signum() == 0;
  }

  /** In feet, unrounded. */
  public double feet() {
    return Unit.FOOT.fromCanonical(metres).doubleValue();
  }

  /** At least one decimal and at most three: {@code 5.0 m}, {@code 4.572 m}. */
  public String inMetres() {
    return decimals(metres, 3) + " m";
  }

  /** Rounded to a tenth of a foot: {@code 16.4 ft}. */
  public String inFeet() {
    return decimals(Unit.FOOT.fromCanonical(metres), 1) + " ft";
  }

  /** With its sign, for balances: {@code +0.5 m}, {@code −0.5 m}, {@code 0.0 m}. */
  public String signedMetres() {
    return sign() + abs().inMetres();
  }

  /** With its sign, rounded to a tenth of a foot. */
  public String signedFeet() {
    return sign() + abs().inFeet();
  }

  private String sign() {
    return metres.signum() > 0 ? "+" : metres.signum() < 0 ? "\u2212" : "";
  }

  private static String decimals(BigDecimal number, int most) {
    BigDecimal rounded = number.setScale(most, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return (rounded.scale() < 1 ? rounded.setScale(1) : rounded).toPlainString();
  }

  @Override
  public int compareTo(Length other) {
    return metres.compareTo(other.metres);
  }

  @Override
  public String toString() {
    return inMetres();
  }
}
