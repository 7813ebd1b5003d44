package loopwright.cause;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/**
 * A value as a person gave it. Each reading of it refuses, with the name, what can't be meant.
 *
 * @param name of the option or the field, as the person sees it
 * @param text what stands there
 * @param unit it is in
 */
public record Typed(String name, String text, Unit unit) {
  private static final double LOWEST_VOLTS = -24;
  private static final double LEAST_BASELINE_VOLTS = -0.5;
  private static final double LARGEST_SENSITIVITY = 40;
  private static final double LARGEST_GAP = 60_000;
  private static final double LARGEST_VOLTS_UNCERTAINTY = 2;
  private static final double LARGEST_RELATIVE_UNCERTAINTY = 0.3;
  private static final BigDecimal SHORTEST_SYSTEM = new BigDecimal("0.5");
  private static final BigDecimal LONGEST_SYSTEM = new BigDecimal(50);

  /** V, zero or negative, no lower than a supply of −24 V lets it be. */
  public double volts() {
    double volts = number("volts with their sign, for instance -9.0").doubleValue();
    if (volts > 0) {
      throw new Refused(CauseProblem.POSITIVE_VOLTS, name, text.strip());
    }
    if (volts < LOWEST_VOLTS) {
      throw new Refused(
          CauseProblem.BEYOND_SUPPLY,
          name,
          text.strip(),
          volts / 1000 < LEAST_BASELINE_VOLTS && volts / 1000 >= LOWEST_VOLTS
              ? "If these are millivolts, give volts."
              : "Check the meter's range and the decimal mark.");
    }
    return volts;
  }

  /** V, negative, as of a loop that works. */
  public double baselineVolts() {
    double volts = volts();
    if (volts > LEAST_BASELINE_VOLTS) {
      throw new Refused(CauseProblem.NO_BASELINE_OUTPUT, name, text.strip());
    }
    return volts;
  }

  /** mV/µm, positive. */
  public double sensitivity() {
    BigDecimal number = number("a sensitivity in " + unit.symbol() + example());
    if (number.signum() <= 0) {
      throw new Refused(
          CauseProblem.NO_SENSITIVITY,
          name,
          text.strip(),
          "it without a sign, in " + unit.symbol());
    }
    double sensitivity = unit.toCanonical(number).doubleValue();
    if (sensitivity > LARGEST_SENSITIVITY) {
      throw new Refused(
          CauseProblem.LARGE_SENSITIVITY,
          name,
          text.strip(),
          unit.symbol(),
          unit == Unit.MILLIVOLT_PER_MICROMETRE
              ? "If it is in mV/mil, give it as such; 200 mV/mil is 7.874 mV/µm."
              : "Check the decimal mark.");
    }
    return sensitivity;
  }

  private String example() {
    return unit == Unit.MILLIVOLT_PER_MIL ? ", for instance 200" : ", for instance 7.874";
  }

  /** µm, positive. */
  public double gapMicrometres() {
    BigDecimal number = number("a gap in " + unit.symbol());
    double micrometres = unit.toCanonical(number).doubleValue();
    if (!(micrometres > 0 && micrometres <= LARGEST_GAP)) {
      throw new Refused(CauseProblem.IMPOSSIBLE_GAP, name, text.strip(), unit.symbol());
    }
    return micrometres;
  }

  /** Standard, V. */
  public double voltsUncertainty() {
    return uncertainty(LARGEST_VOLTS_UNCERTAINTY, "a standard uncertainty in volts: 50 mV is 0.05");
  }

  /** Standard, relative. */
  public double relativeUncertainty() {
    return uncertainty(LARGEST_RELATIVE_UNCERTAINTY, "a share of the sensitivity: 1.5 % is 0.015");
  }

  private double uncertainty(double most, String remedy) {
    BigDecimal number = number(remedy);
    if (number.signum() <= 0) {
      throw new Refused(CauseProblem.NOT_POSITIVE, name, text.strip(), remedy);
    }
    if (number.doubleValue() > most) {
      throw new Refused(CauseProblem.LARGE_UNCERTAINTY, name, text.strip(), remedy);
    }
    return number.doubleValue();
  }

  /** That a driver can be tuned for. */
  public Length systemLength() {
    BigDecimal metres = unit.toCanonical(number("metres, for instance 5.0"));
    if (metres.compareTo(SHORTEST_SYSTEM) < 0 || metres.compareTo(LONGEST_SYSTEM) > 0) {
      throw new Refused(
          CauseProblem.IMPOSSIBLE_LENGTH,
          name,
          text.strip(),
          SHORTEST_SYSTEM.toPlainString(),
          LONGEST_SYSTEM.toPlainString());
    }
    return new Length(metres);
  }

  /** Where it was measured. */
  public TappingPoint place() {
    return TappingPoint.named(text)
        .orElseThrow(
            () ->
                new Refused(
                    CauseProblem.UNKNOWN_PLACE, name, text.strip(), TappingPoint.choices()));
  }

  private BigDecimal number(String remedy) {
    return Numbers.read(text)
        .filter(number -> Double.isFinite(number.doubleValue()))
        .orElseThrow(() -> new Refused(CauseProblem.NOT_A_NUMBER, name, text.strip(), remedy));
  }
}
