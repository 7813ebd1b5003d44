package loopwright.curve;

import java.math.BigDecimal;
import loopwright.units.Dimension;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * One voltage at one gap, with what was typed.
 *
 * @param run while the gap was moved which way
 * @param gap as typed, µm or mil, not negative
 * @param output as typed, V or mV, with or without its sign
 * @param volts negative or zero; its magnitude is that of the output typed
 */
public record CurveReading(Run run, Reported gap, Reported output, double volts) {

  /** Refuses other dimensions, a negative gap, a positive voltage and one that isn't the typed. */
  public CurveReading {
    if (gap.unit().dimension() != Dimension.GAP || output.unit().dimension() != Dimension.VOLTAGE) {
      throw new IllegalArgumentException("A reading is a voltage at a gap.");
    }
    if (gap.amount().signum() < 0) {
      throw new IllegalArgumentException("A gap is not negative.");
    }
    if (volts > 0 || Math.abs(volts) != Math.abs(output.canonical())) {
      throw new IllegalArgumentException("The voltage is the typed one, negative: " + volts);
    }
  }

  /** The reading as typed; a positive output is a magnitude. */
  public static CurveReading of(Run run, Reported gap, Reported output) {
    return new CurveReading(run, gap, output, 0.0 - Math.abs(output.canonical()));
  }

  /**
   * A reading that nobody typed, for instance a computed one.
   *
   * @param volts negative or zero
   */
  public static CurveReading of(Run run, double gapMicrometres, double volts) {
    return of(run, plain(gapMicrometres, Unit.MICROMETRE), plain(volts, Unit.VOLT));
  }

  private static Reported plain(double amount, Unit unit) {
    BigDecimal exact = BigDecimal.valueOf(amount);
    return new Reported(Numbers.plain(exact), unit, exact);
  }

  public double gapMicrometres() {
    return gap.canonical();
  }
}
