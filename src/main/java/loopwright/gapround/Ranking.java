package loopwright.gapround;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.fieldcheck.GapReadings;

/**
 * Which loops of a round are worth a visit, worst first. Of a pair, what both moved to the same
 * side is the shaft's or the supply's; only what is left speaks of the loop. Limits are common
 * practice, no source.
 */
final class Ranking {
  /** V; a change below it is the shaft, the meter and the day. */
  static final double WORTH_A_VISIT = 0.5;

  /** V; nearer to 0 the probe touches, is shorted, or the driver is dead. */
  static final double NEAR_RAIL = -1.0;

  /** V; beyond it nothing stands before the probe, or its circuit is open. */
  static final double FAR_RAIL = -22.0;

  /** What is left to a loop itself is never more than what it moved. */
  static final GapReadings.Notable NOTABLE =
      new GapReadings.Notable(WORTH_A_VISIT, NEAR_RAIL, FAR_RAIL);

  private static final double AT_A_RAIL = 100;

  static final Comparator<Ranked> WORST_FIRST =
      Comparator.comparingDouble(Ranked::score)
          .reversed()
          .thenComparing(each -> each.loop().tag())
          .thenComparing(each -> each.loop().now().id());

  private Ranking() {}

  /**
   * A loop with its place.
   *
   * @param common what the pair moved together, V; empty without a pair of which both changed
   * @param own what is left to the loop itself, V; empty where nothing compares
   * @param score 0 is nothing
   */
  record Ranked(Compared loop, Optional<Double> common, Optional<Double> own, double score) {
    boolean isWorthAVisit() {
      return score >= WORTH_A_VISIT;
    }

    boolean isAtARail() {
      return score >= AT_A_RAIL;
    }
  }

  static List<Ranked> of(List<Compared> round) {
    Map<String, Compared> byTag = new HashMap<>();
    round.forEach(each -> byTag.put(key(each.tag(), each), each));
    return round.stream()
        .map(each -> ranked(each, Optional.ofNullable(byTag.get(key(each.pair(), each)))))
        .sorted(WORST_FIRST)
        .toList();
  }

  private static String key(String tag, Compared of) {
    return tag.toUpperCase(Locale.ROOT) + "/" + of.now().state().word();
  }

  private static Ranked ranked(Compared loop, Optional<Compared> pair) {
    Optional<Double> common =
        loop.change().flatMap(a -> pair.flatMap(Compared::change).map(b -> together(a, b)));
    Optional<Double> own = loop.change().map(change -> change - common.orElse(0.0));
    double volts = loop.now().volts().canonical();
    boolean rail = volts > NEAR_RAIL || volts < FAR_RAIL;
    return new Ranked(loop, common, own, (rail ? AT_A_RAIL : 0) + own.map(Math::abs).orElse(0.0));
  }

  /** The smaller of two changes to the same side; nothing of two to different sides. */
  static double together(double a, double b) {
    return a * b <= 0 ? 0 : Math.copySign(Math.min(Math.abs(a), Math.abs(b)), a);
  }
}
