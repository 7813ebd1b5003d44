package loopwright.exchange;

import java.util.List;
import java.util.Optional;
import loopwright.matching.PartKind;
import loopwright.units.Length;

/**
 * A loop whose lengths are all known, and how far they are from what its driver is tuned for.
 *
 * @param tag of its point
 * @param site parts don't travel between sites
 * @param train parts travel less readily between trains
 * @param parts known to be fitted, from the probe to the driver
 * @param balance nominal lengths fitted − what the driver is tuned for
 * @param tolerance largest balance of either sign that still matches, inclusive
 * @param family code by which a cable would be added or left out; empty when not known
 */
public record LoopLengths(
    String tag,
    String site,
    String train,
    List<FittedPart> parts,
    Length balance,
    Length tolerance,
    String family) {

  public LoopLengths {
    parts = List.copyOf(parts);
  }

  public boolean isInBalance() {
    return matches(balance);
  }

  boolean matches(Length other) {
    return other.abs().compareTo(tolerance) <= 0;
  }

  /** The one part of that kind that the loop has; empty when it has none or several. */
  Optional<FittedPart> only(PartKind kind) {
    List<FittedPart> found = parts.stream().filter(part -> part.kind() == kind).toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }

  /** What the balance would be with a part of that length in this one's place. */
  Length balanceWith(FittedPart part, Length instead) {
    Length now = part.length() == null ? Length.ZERO : part.length();
    Length more = instead.minus(now);
    return part.sign() > 0 ? balance.plus(more) : balance.minus(more);
  }

  /** The loop after a part came in another's place. */
  LoopLengths with(FittedPart out, FittedPart in) {
    Length after = balanceWith(out, in.length() == null ? Length.ZERO : in.length());
    List<FittedPart> now = parts.stream().map(part -> part.equals(out) ? in : part).toList();
    return new LoopLengths(tag, site, train, now, after, tolerance, family);
  }
}
