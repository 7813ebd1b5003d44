package loopwright.register;

import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.problem.Text;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * Which parts to list and in what order; null and empty texts ask for nothing.
 *
 * @param length nominal length exactly
 * @param maker exactly as written
 * @param serial how serial or shop number begins, in any case; with * in front, any part of it
 */
public record ComponentQuery(
    @Nullable PartKind kind,
    @Nullable FamilyId family,
    @Nullable Length length,
    @Nullable PartState state,
    String maker,
    String serial,
    Order order) {
  public static final ComponentQuery EVERYTHING =
      new ComponentQuery(null, null, null, null, "", "", Order.LABEL);

  /** How a list can be ordered; always completed so that no two parts tie. */
  public enum Order {
    /** By serial or shop number. */
    LABEL("label"),
    LABEL_BACKWARD("label-backward"),
    /** The last registered first. */
    NEWEST("newest");

    private final String word;

    Order(String word) {
      this.word = word;
    }

    /** As it stands in an address. */
    public String word() {
      return word;
    }

    /** The one of that word; by label for any other. */
    public static Order named(String word) {
      return word.equals(LABEL_BACKWARD.word)
          ? LABEL_BACKWARD
          : word.equals(NEWEST.word) ? NEWEST : LABEL;
    }
  }

  /** Refuses texts that are longer than any maker or serial. */
  public ComponentQuery {
    maker = Text.kept("the maker", maker, 80);
    serial = Text.kept("the serial", serial, 61);
  }

  public ComponentQuery ofKind(@Nullable PartKind other) {
    return new ComponentQuery(other, family, length, state, maker, serial, order);
  }

  public ComponentQuery ofFamily(@Nullable FamilyId other) {
    return new ComponentQuery(kind, other, length, state, maker, serial, order);
  }

  public ComponentQuery ofLength(@Nullable Length other) {
    return new ComponentQuery(kind, family, other, state, maker, serial, order);
  }

  public ComponentQuery inState(@Nullable PartState other) {
    return new ComponentQuery(kind, family, length, other, maker, serial, order);
  }

  public ComponentQuery ofMaker(String other) {
    return new ComponentQuery(kind, family, length, state, other, serial, order);
  }

  public ComponentQuery withSerial(String other) {
    return new ComponentQuery(kind, family, length, state, maker, other, order);
  }

  public ComponentQuery inOrder(Order other) {
    return new ComponentQuery(kind, family, length, state, maker, serial, other);
  }
}
