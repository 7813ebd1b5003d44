package loopwright.register;

import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * A nominal length that a family offers.
 *
 * @param part probe or extension cable; for a driver the system length that it is tuned for
 * @param typed as written
 */
public record OfferedLength(PartKind part, Reported typed) implements Comparable<OfferedLength> {

  /** Refuses other kinds of part and lengths that can't be. */
  public OfferedLength {
    if (part != PartKind.PROBE && part != PartKind.CABLE && part != PartKind.DRIVER) {
      throw new Refused(RegisterProblem.NO_KIND_OF_LENGTH, part.word());
    }
    NominalLength.refuseImpossible(typed, NominalLength.MOST_METRES);
  }

  /**
   * Reads one.
   *
   * @throws Refused if the text is no number or a length that can't be
   */
  public static OfferedLength read(PartKind part, String text, Unit unit) {
    return new OfferedLength(part, NominalLength.reported(text, unit));
  }

  public Length length() {
    return Length.of(typed);
  }

  /** By part, then by length. */
  @Override
  public int compareTo(OfferedLength other) {
    int byPart = part.compareTo(other.part);
    return byPart == 0 ? length().compareTo(other.length()) : byPart;
  }
}
