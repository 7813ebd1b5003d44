package loopwright.exchange;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
import loopwright.units.Length;

/**
 * Parts of one kind and family that change places among a few loops: two loops swap, more form a
 * ring. It stands alone: no part comes from elsewhere and none is left over.
 *
 * @param moves one for each loop
 * @param weight of all moves, see {@link Weights}
 */
public record Exchange(PartKind kind, String family, String site, List<Move> moves, int weight) {

  /**
   * One part goes to another loop.
   *
   * @param part that moves
   * @param takesPlaceOf the part that leaves the other loop
   * @param before the other loop's balance now
   * @param after its balance then
   * @param putsRight whether the other loop is out of balance now and in balance then
   * @param inBalance whether it is in balance then
   */
  public record Move(
      FittedPart part,
      String from,
      String to,
      FittedPart takesPlaceOf,
      Length before,
      Length after,
      boolean putsRight,
      boolean inBalance) {}

  public Exchange {
    moves = List.copyOf(moves);
  }

  static Exchange of(List<Seat> anyOrder, String family, Weights weights) {
    List<Seat> ring = beginningWithFirstTag(anyOrder);
    List<Move> moves = new ArrayList<>();
    int weight = 0;
    for (int i = 0; i < ring.size(); i++) {
      Seat from = ring.get(i);
      Seat to = ring.get((i + 1) % ring.size());
      moves.add(move(from, to));
      weight += weights.of(from.part().kind());
      weight += from.train().equals(to.train()) ? 0 : weights.otherTrain();
    }
    Seat first = ring.get(0);
    return new Exchange(first.part().kind(), family, first.loop().site(), moves, weight);
  }

  private static List<Seat> beginningWithFirstTag(List<Seat> ring) {
    List<Seat> turned = new ArrayList<>(ring);
    int first = 0;
    for (int i = 1; i < ring.size(); i++) {
      first = ring.get(i).loop().tag().compareTo(ring.get(first).loop().tag()) < 0 ? i : first;
    }
    Collections.rotate(turned, -first);
    return turned;
  }

  private static Move move(Seat from, Seat to) {
    LoopLengths loop = to.loop();
    Length after = loop.balanceWith(to.part(), from.length());
    return new Move(
        from.part(),
        from.loop().tag(),
        loop.tag(),
        to.part(),
        loop.balance(),
        after,
        !loop.isInBalance() && loop.matches(after),
        loop.matches(after));
  }

  /** Tags of the loops that it touches, in alphabetical order. */
  public List<String> loops() {
    return moves.stream().map(Move::to).sorted().toList();
  }

  /** Loops that are in balance then and aren't now. */
  public int putsRight() {
    return (int) moves.stream().filter(Move::putsRight).count();
  }

  /** Two loops, each out by as much as the other, one too long and one too short. */
  public boolean isMirrored() {
    return moves.size() == 2
        && !moves.get(0).before().isZero()
        && moves.get(0).before().plus(moves.get(1).before()).isZero();
  }

  /** What to do, in order. The first step is always to look. */
  public List<String> steps() {
    return Steps.of(this);
  }

  /** In a line: {@code swap the extension cables of K-1X and K-1Y}. */
  public String inWords() {
    String what = kind == PartKind.PROBE ? "probes, each with its lead," : kind.word() + "s";
    List<String> tags = loops();
    return tags.size() == 2
        ? "swap the %s of %s and %s".formatted(what, tags.get(0), tags.get(1))
        : "pass the %s round: %s"
            .formatted(
                what,
                moves.stream()
                    .map(move -> move.from() + " → " + move.to())
                    .collect(Collectors.joining(", ")));
  }
}
