package loopwright.field;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a device sent, and what became of it.
 *
 * @param from label of the device
 * @param by who took the pack along
 * @param recorded it became a record when it came
 * @param told what was recorded, or what speaks against it; one sentence a line
 * @param decision null while nobody decided, or nothing was to decide
 */
record Entry(
    long id,
    String uuid,
    long outage,
    long point,
    String tag,
    String from,
    String by,
    boolean recorded,
    String told,
    SentEntry content,
    String hash,
    Instant at,
    @Nullable Decision decision) {

  /** What somebody decided. */
  record Decision(boolean recorded, String who, Instant at, String reason, String told) {}

  boolean waits() {
    return !recorded && decision == null;
  }

  /** {@code recorded}, {@code waits} or {@code set aside}. */
  String state() {
    if (recorded || (decision != null && decision.recorded())) {
      return "recorded";
    }
    return decision == null ? "waits" : "set aside";
  }

  /** As people say it. */
  String number() {
    return "FE-" + id;
  }
}
