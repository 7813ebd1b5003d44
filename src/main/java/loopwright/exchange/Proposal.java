package loopwright.exchange;

import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What can be done about loops out of length balance.
 *
 * <p><b>The model.</b> One kind of part and one family at a time, within a site, parts are dealt
 * out anew to the loops that have one of them: each loop gets exactly one, of whatever length. Of
 * all dealings those are best that put most loops in balance; of these, the one whose moves weigh
 * least ({@link Weights}; a part that stays where it is weighs nothing). {@link LengthFlow} finds
 * it as a minimum-cost flow over length classes, so that the result is optimal for its kind and
 * family, and a test compares it with trying everything. An optimal dealing never takes a loop out
 * of balance: leaving that loop out of its ring would do as much with fewer moves.
 *
 * <p>The dealing falls into rings (swaps, mostly): each is an {@link Exchange} that stands alone.
 * Often one pair of loops can be put right by swapping either their cables or their probes; the
 * lengths alone can't tell which of the two was mixed up. So rings that touch the same loops are
 * told as one {@link Way} with its alternatives, the lightest first. Between kinds the choice is
 * made one ring after the other, the least weight for each loop put right first; that choice across
 * kinds isn't proved to be the best. A loop that an exchange leaves out of balance may be put right
 * by another of another kind: such {@link SeveralKinds several kinds at once} are listed apart.
 *
 * <p>What stays out of balance is held against the stock, again as a minimum-cost flow: most loops
 * made whole by one part each, then least work. What stock can't do is a {@link Shortage} if one
 * part of a length that its family offers would do, or else stands apart as a case for {@link
 * SeveralParts several parts at once}.
 *
 * @param outOfBalance loops looked at that are out of balance now
 * @param ways exchanges that don't get into each other's way, with their alternatives
 * @param otherWays exchanges that overlap one of {@code ways} without touching the same loops
 * @param bySeveralKinds exchanges of different kinds that belong together
 * @param leaveOut cables too many
 * @param fromStock loops that a part on a shelf makes whole
 * @param shortages exact lengths that are missing
 * @param apart loops that no single part puts right
 */
public record Proposal(
    int outOfBalance,
    List<Way> ways,
    List<Exchange> otherWays,
    List<SeveralKinds> bySeveralKinds,
    List<LeaveOut> leaveOut,
    List<FromStock> fromStock,
    List<Shortage> shortages,
    List<SeveralParts> apart) {

  /**
   * An exchange, and others that do as much for the same loops.
   *
   * @param best the lightest
   */
  public record Way(Exchange best, List<Exchange> instead) {}

  /** A cable that is as long as its loop is too long. */
  public record LeaveOut(String loop, FittedPart cable, Length balance) {}

  /**
   * A part on a shelf that makes a loop whole.
   *
   * @param insteadOf what comes out; null where a cable is added
   * @param balance of the loop before
   */
  public record FromStock(
      String loop, StockPart take, @Nullable FittedPart insteadOf, Length balance) {}

  /**
   * A length that is missing.
   *
   * @param family code
   * @param loops that wait for it, one part each
   */
  public record Shortage(String family, PartKind kind, Length length, List<Waiting> loops) {
    public int howMany() {
      return loops.size();
    }
  }

  /**
   * A loop that waits for a part.
   *
   * @param or other single parts that would do, in words
   */
  public record Waiting(String loop, Length balance, List<String> or) {}

  /**
   * Exchanges of different kinds that share a loop: the first leaves it out of balance, a later one
   * puts it right.
   *
   * @param exchanges in the order in which to make them
   */
  public record SeveralKinds(List<Exchange> exchanges) {
    /** Tags of the loops that they touch, in alphabetical order. */
    public List<String> loops() {
      return exchanges.stream().flatMap(e -> e.loops().stream()).distinct().sorted().toList();
    }

    public int putsRight() {
      return exchanges.stream().mapToInt(Exchange::putsRight).sum();
    }
  }

  /**
   * A loop that no single part puts right.
   *
   * @param fit lengths that would do together, in words; empty when none are offered
   * @param why in a clause
   */
  public record SeveralParts(String loop, Length balance, List<String> fit, String why) {}

  public Proposal {
    ways = List.copyOf(ways);
    otherWays = List.copyOf(otherWays);
    bySeveralKinds = List.copyOf(bySeveralKinds);
    leaveOut = List.copyOf(leaveOut);
    fromStock = List.copyOf(fromStock);
    shortages = List.copyOf(shortages);
    apart = List.copyOf(apart);
  }

  /** Loops that the exchanges put right. */
  public int putRight() {
    return ways.stream().mapToInt(way -> way.best().putsRight()).sum()
        + bySeveralKinds.stream().mapToInt(SeveralKinds::putsRight).sum();
  }

  /**
   * Works it out.
   *
   * @param loops whose lengths are known; loops in balance may be among them and are moved only
   *     where that helps others and keeps them in balance
   * @param stock parts that may be fitted; those whose length isn't proved are not counted on
   */
  public static Proposal of(
      List<LoopLengths> loops, List<StockPart> stock, Families families, Weights weights) {
    Exchanges exchanges = Exchanges.of(loops, weights);
    List<LoopLengths> left = exchanges.left();
    Remedies remedies = new Remedies(families, weights);
    List<LeaveOut> leaveOut = remedies.leaveOut(left);
    List<String> done = leaveOut.stream().map(LeaveOut::loop).toList();
    List<LoopLengths> open = left.stream().filter(loop -> !done.contains(loop.tag())).toList();
    List<FromStock> fromStock = new StockFlow(remedies, stock).cover(open);
    List<String> covered = fromStock.stream().map(FromStock::loop).toList();
    List<LoopLengths> bare = open.stream().filter(loop -> !covered.contains(loop.tag())).toList();
    return new Proposal(
        (int) loops.stream().filter(loop -> !loop.isInBalance()).count(),
        exchanges.ways(),
        exchanges.otherWays(),
        exchanges.bySeveralKinds(),
        leaveOut,
        fromStock,
        remedies.shortages(bare),
        remedies.apart(bare));
  }
}
