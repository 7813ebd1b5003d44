package loopwright.web;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import io.github.bucket4j.TimeMeter;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Slows down guessing of passwords: five tries for one login from one address, then one a minute. A
 * stranger elsewhere can't lock a colleague out this way.
 */
public final class Throttle {
  static final int TRIES = 5;
  private static final Duration ANOTHER_TRY_AFTER = Duration.ofMinutes(1);

  /** So that made-up logins can't fill the memory; the longest unused are forgotten first. */
  private static final int MOST_REMEMBERED = 10_000;

  private record Guesser(String login, String address) {}

  private final TimeMeter time;
  private final Map<Guesser, Bucket> buckets = new LinkedHashMap<>(64, 0.75f, true);

  public Throttle(InstantSource clock) {
    this.time = new Meter(clock);
  }

  /** Takes one try: zero when it may go ahead, else how long to wait. */
  public synchronized Duration take(String login, String address) {
    Bucket bucket = buckets.computeIfAbsent(guesser(login, address), any -> bucket());
    if (buckets.size() > MOST_REMEMBERED) {
      buckets.remove(buckets.keySet().iterator().next());
    }
    ConsumptionProbe probe = bucket.tryConsumeAndReturnRemaining(1);
    return probe.isConsumed() ? Duration.ZERO : Duration.ofNanos(probe.getNanosToWaitForRefill());
  }

  /** The right password was given: earlier slips count no more. */
  public synchronized void forget(String login, String address) {
    buckets.remove(guesser(login, address));
  }

  private static Guesser guesser(String login, String address) {
    return new Guesser(login.strip().toLowerCase(Locale.ROOT), address);
  }

  private Bucket bucket() {
    return Bucket.builder()
        .addLimit(limit -> limit.capacity(TRIES).refillGreedy(1, ANOTHER_TRY_AFTER))
        .withCustomTimePrecision(time)
        .build();
  }

  private record Meter(InstantSource clock) implements TimeMeter {
    @Override
    public long currentTimeNanos() {
      return ChronoUnit.NANOS.between(Instant.EPOCH, clock.instant());
    }

    @Override
    public boolean isWallClockBased() {
      return true;
    }
  }
}
