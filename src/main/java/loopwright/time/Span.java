package loopwright.time;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/**
 * A half-open range of moments: {@code from} is in it, {@code until} is not. A range that has not
 * ended has {@link #OPEN} as its end; that is the one spelling of "until further notice".
 */
public record Span(Instant from, Instant until) {
  /** 9999-12-31T00:00Z, the only "no end yet" on disk and in memory. */
  public static final Instant OPEN = Instant.parse("9999-12-31T00:00:00Z");

  /** Refuses an empty or backward range. */
  public Span {
    if (!from.isBefore(until)) {
      throw new IllegalArgumentException("A range ends after it begins: " + from + " to " + until);
    }
  }

  public static Span from(Instant from) {
    return new Span(from, OPEN);
  }

  public boolean isOpen() {
    return until.equals(OPEN);
  }

  public boolean contains(Instant moment) {
    return !moment.isBefore(from) && moment.isBefore(until);
  }

  public boolean overlaps(Span other) {
    return from.isBefore(other.until) && other.from.isBefore(until);
  }

  /** As the database takes it. */
  public static OffsetDateTime utc(Instant moment) {
    return moment.atOffset(ZoneOffset.UTC);
  }
}
