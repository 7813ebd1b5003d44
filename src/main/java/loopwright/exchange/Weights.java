package loopwright.exchange;

import loopwright.matching.PartKind;

/**
 * How much work it is to move one part: whole numbers, only their proportions count. Common
 * practice, no source: a driver sits in a junction box, a cable in conduit, a probe behind a
 * bearing cover.
 *
 * @param driver to unscrew and screw on
 * @param cable to pull out of and into its conduit
 * @param probe with the machine opened for access
 * @param otherTrain more for a part that goes to another train
 */
public record Weights(int driver, int cable, int probe, int otherTrain) {
  public static final Weights USUAL = new Weights(1, 3, 6, 1);

  /** Refuses weights that are not above zero. */
  public Weights {
    if (driver <= 0 || cable <= 0 || probe <= 0 || otherTrain < 0) {
      throw new IllegalArgumentException("A move weighs more than nothing.");
    }
  }

  public int of(PartKind kind) {
    return switch (kind.place()) {
      case DRIVER_SLOT, AFTER_DRIVER -> driver;
      case PATH -> cable;
      case PROBE_SLOT -> probe;
    };
  }
}
