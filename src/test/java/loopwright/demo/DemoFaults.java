package loopwright.demo;

import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is hidden in the invented plant for its users to find. Everything else there is sound.
 *
 * <p>Parts exchanged in an outage between as found and as left are ordinary history; the faults are
 * the cases after them.
 */
public final class DemoFaults {
  public static final List<String> CABLES_SWAPPED = List.of("K101-V3X", "K101-V3Y");
  public static final List<String> PROBES_SWAPPED = List.of("K201-V5X", "K201-V5Y");

  /** Probe with a lead 1 m too long, then moved until the voltage looked right. */
  public static final String TOO_LONG_AND_REGAPPED = "G301-V7X";

  /** A driver tuned for 20 ft on a 15 ft loop. */
  public static final String DRIVER_OF_ANOTHER_LENGTH = "K601-V5Y";

  /** Like for like, but no curve since. */
  public static final String CHANGED_SINCE_CALIBRATION = "K501-V2X";

  public static final String UNKNOWN_LENGTH = "K601-V8X";

  /** Loses sensitivity year by year and still conforms. */
  static final String DRIFTING = "K501-V4Y";

  /** A wet cable failed as found; with a new one it conforms as left. */
  static final String CONFORMS_AFTER_EXCHANGE = "K201-V2X";

  /** Pairs built with a short and a long lead, so that a swap within the pair shows. */
  static final Set<String> MIXED_PAIRS = Set.of("K101-V3X", "K101-V3Y", "K201-V5X", "K201-V5Y");

  /**
   * A part exchanged in an outage, between as found and as left.
   *
   * @param outage counted from 0
   * @param noCurve why no as-found curve could be taken; empty when one was
   */
  record Exchange(
      String tag, int outage, String slot, String why, LoopStory.Damage damage, String noCurve) {

    static Exchange of(String tag, int outage, String slot, String why) {
      return new Exchange(tag, outage, slot, why, LoopStory.Damage.NONE, "");
    }
  }

  static final List<Exchange> EXCHANGES =
      List.of(
          Exchange.of("K101-V1Y", 0, "probe", "tip scratched by the shaft"),
          Exchange.of("K101-A2", 1, "path-1", "connector pin bent"),
          new Exchange(
              CONFORMS_AFTER_EXCHANGE,
              2,
              "path-1",
              "jacket cut at the conduit, water inside",
              new LoopStory.Damage(0.75, 25),
              ""),
          Exchange.of("K201-V3Y", 1, "driver", "housing corroded"),
          Exchange.of("K201-A4", 0, "probe", "lead chafed"),
          Exchange.of("G301-V5X", 1, "path-1", "connector oil-wet, would not clean"),
          Exchange.of("G301-V2Y", 0, "driver", "terminal stripped"),
          Exchange.of("P401-V3X", 2, "probe", "tip scratched by the shaft"),
          Exchange.of("K501-V1X", 1, "probe", "lead chafed"),
          Exchange.of("K501-A1", 2, "path-1", "armour crushed"),
          new Exchange(
              "K601-V3X",
              2,
              "driver",
              "dead",
              LoopStory.Damage.NONE,
              "output stays at -0.7 V at every gap"),
          Exchange.of("K601-V6Y", 1, "probe", "thread damaged"),
          Exchange.of("X701-V2X", 1, "driver", "housing corroded"));

  /** Share of its slope that the drifting loop has lost, by year. */
  static final Map<Integer, Double> DRIFT =
      Map.of(2022, 0.0, 2023, -0.006, 2024, -0.011, 2025, -0.017, 2026, -0.021);

  private DemoFaults() {}
}
