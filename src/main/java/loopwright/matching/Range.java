package loopwright.matching;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A low and a high limit of one quantity in one unit, either of which may be unknown. Both ends
 * belong to it.
 */
public record Range(@Nullable BigDecimal low, @Nullable BigDecimal high) {
  public static final Range NOT_SAID = new Range(null, null);

  public static Range of(String low, String high) {
    return new Range(new BigDecimal(low), new BigDecimal(high));
  }

  /** Whether nothing is known of it. */
  public boolean isNotSaid() {
    return low == null && high == null;
  }

  public boolean isComplete() {
    return low != null && high != null;
  }

  /** Whether no limit that is known is passed by the value; on a limit it isn't. */
  public boolean holds(BigDecimal value) {
    return (low == null || low.compareTo(value) <= 0)
        && (high == null || high.compareTo(value) >= 0);
  }

  /** Whether the value lies inside every limit that is known and on none. */
  public boolean holdsInside(double value) {
    return (low == null || low.doubleValue() < value)
        && (high == null || high.doubleValue() > value);
  }

  /** Whether both limits of the other one, as far as they are known, are held. */
  public boolean holds(Range other) {
    return (other.low == null || holds(other.low)) && (other.high == null || holds(other.high));
  }
}
