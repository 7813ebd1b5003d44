package loopwright.exchange;

import loopwright.matching.Families;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A part of a loop, or on a shelf, as far as exchanges look at it.
 *
 * @param number by which the register knows it
 * @param label what people call it; empty for a part that is not identified
 * @param family code of its family; null when not known
 * @param length nominal length of a lead or cable, or what a driver is tuned for; null when not
 *     known
 * @param proved whether the length rests on evidence on which a loop can match
 * @param free whether it may be moved: neither quarantined nor scrapped
 */
public record FittedPart(
    long number,
    String label,
    PartKind kind,
    @Nullable String family,
    @Nullable Length length,
    boolean proved,
    boolean free) {

  /** For sentences: {@code extension cable XC-51733}. */
  String words() {
    return label.isEmpty() ? kind.word() : kind.word() + " " + label;
  }

  boolean isOf(PartKind otherKind, String otherFamily) {
    return kind == otherKind && family != null && Families.same(family, otherFamily);
  }

  /** Which sign the length has in the balance: a driver's is taken off. */
  int sign() {
    return kind.place() == PartKind.Place.DRIVER_SLOT ? -1 : 1;
  }
}
