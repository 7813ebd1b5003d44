package loopwright.field;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A phone or tablet that holds a pack.
 *
 * @param person who took it along
 * @param label what they call the device
 * @param seenAt when it was last heard of; null if never
 * @param endedBy who ended it; null while it may send
 * @param endReason null while it may send
 */
record Device(
    long id,
    long outage,
    long person,
    String personName,
    String label,
    Instant takenAt,
    Instant expiresAt,
    @Nullable Instant seenAt,
    @Nullable String endedBy,
    @Nullable String endReason) {

  boolean isExpired(Instant now) {
    return !now.isBefore(expiresAt);
  }
}
