package loopwright.exchange;

import java.util.ArrayList;
import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * Which parts on the shelf leave a loop in balance, place by place, everything else as it is. A
 * loop that is in balance asks for the like of what it has.
 */
public final class Suiting {
  private final Remedies remedies;
  private final List<StockPart> stock;

  public Suiting(Families families, Weights weights, List<StockPart> stock) {
    this.remedies = new Remedies(families, weights);
    this.stock = List.copyOf(stock);
  }

  /**
   * A place in a loop with what could sit there.
   *
   * @param insteadOf what comes out; null where a cable is added
   * @param wanted length with which the balance is exactly zero
   * @param work weight of the move
   * @param fitting parts on the shelf, in the order given
   */
  public record Place(
      @Nullable FittedPart insteadOf,
      PartKind kind,
      String family,
      Length wanted,
      int work,
      List<StockPart> fitting) {
    public Place {
      fitting = List.copyOf(fitting);
    }

    /** For sentences: {@code extension cable of 4 m, family Q8}. */
    public String inWords() {
      String what =
          switch (kind.place()) {
            case DRIVER_SLOT -> "%s tuned for %s";
            case PROBE_SLOT -> "%s with %s lead";
            default -> "%s of %s";
          };
      return what.formatted(kind.word(), wanted.inMetres()) + ", family " + family;
    }
  }

  /** From the probe to the driver; places whose part has no family or length are left out. */
  public List<Place> places(LoopLengths loop) {
    List<Place> places = new ArrayList<>();
    for (FittedPart part : loop.parts()) {
      Length length = part.length();
      String family = part.family();
      if (length != null && family != null) {
        Length wanted =
            part.sign() > 0 ? length.minus(loop.balance()) : length.plus(loop.balance());
        places.add(
            new Place(
                part,
                part.kind(),
                family,
                wanted,
                remedies.weight(part.kind()),
                fitting(part.kind(), family, other -> loop.balanceWith(part, other), loop)));
      }
    }
    if (remedies.takesCable(loop) && !loop.isInBalance()) {
      places.add(
          new Place(
              null,
              PartKind.CABLE,
              loop.family(),
              Length.ZERO.minus(loop.balance()),
              remedies.weight(PartKind.CABLE),
              fitting(PartKind.CABLE, loop.family(), other -> loop.balance().plus(other), loop)));
    }
    return places;
  }

  private interface Balance {
    Length with(Length other);
  }

  private List<StockPart> fitting(PartKind kind, String family, Balance balance, LoopLengths loop) {
    return stock.stream()
        .filter(lying -> lying.part().isOf(kind, family))
        .filter(lying -> lying.part().free() && lying.part().proved())
        .filter(
            lying -> {
              Length length = lying.part().length();
              return length != null && loop.matches(balance.with(length));
            })
        .toList();
  }
}
