package loopwright.journal;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** An entry as its row holds it, with the row of its change beside. */
record StoredEntry(
    long seq,
    long change,
    int part,
    boolean last,
    Instant at,
    byte[] body,
    byte[] leafHash,
    byte[] chainHash,
    Made made) {

  /** The row of the change. */
  record Made(
      Instant at,
      @Nullable Long actorId,
      String actorName,
      String actorRole,
      String what,
      String reason) {}
}
