package loopwright.time;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * From where a history over two times is looked at: how it was at a moment, as it was known when
 * the record had so many entries.
 *
 * @param at the moment asked for
 * @param known number of the last journal entry that counts; null for all there are
 */
public record Viewpoint(Instant at, @Nullable Long known) {
  /** The latest of everything, as known now. */
  public static final Viewpoint LATEST = new Viewpoint(Span.OPEN, null);

  /** How it was at that moment, as known now. */
  public static Viewpoint of(Instant at) {
    return new Viewpoint(at, null);
  }

  /** Whether the whole record counts. */
  public boolean asKnownNow() {
    return known == null;
  }
}
