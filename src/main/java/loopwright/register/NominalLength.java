package loopwright.register;

import java.math.BigDecimal;
import loopwright.matching.Evidence;
import loopwright.matching.KnownLength;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Dimension;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * The electrical length that a lead or cable is sold as, or that a driver is tuned for, as typed,
 * and how it is known.
 */
public record NominalLength(Reported typed, Evidence evidence) {
  /** The longest that is taken, m; common practice, no source. */
  static final int MOST_METRES = 60;

  /** Refuses another unit, zero and less, and more than 60 m. */
  public NominalLength {
    refuseImpossible(typed, MOST_METRES);
  }

  /**
   * Reads one.
   *
   * @throws Refused if the text is no number or a length that can't be
   */
  public static NominalLength read(String text, Unit unit, Evidence evidence) {
    return new NominalLength(reported(text, unit), evidence);
  }

  static Reported reported(String text, Unit unit) {
    return Reported.read(text, unit)
        .orElseThrow(
            () ->
                new Refused(
                    RegisterProblem.NOT_A_NUMBER,
                    text.strip(),
                    "a length in " + unit.symbol(),
                    "4.5"));
  }

  static void refuseImpossible(Reported length, int mostMetres) {
    if (length.unit().dimension() != Dimension.LENGTH) {
      throw new Refused(RegisterProblem.BAD_UNIT, length.unit().symbol());
    }
    Text.kept("the length", length.typed(), 30);
    BigDecimal metres = Length.of(length).metres();
    if (metres.signum() <= 0 || metres.compareTo(BigDecimal.valueOf(mostMetres)) > 0) {
      Length most = Length.ofMetres(Integer.toString(mostMetres));
      throw new Refused(
          RegisterProblem.IMPOSSIBLE_LENGTH, length, mostMetres, most.inFeet().replace(" ft", ""));
    }
  }

  /** Exact, whatever unit it was typed in. */
  public Length length() {
    return Length.of(typed);
  }

  public KnownLength known() {
    return new KnownLength(length(), evidence);
  }
}
