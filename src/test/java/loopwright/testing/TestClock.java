package loopwright.testing;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that stands until it is moved. */
public final class TestClock implements InstantSource {
  private Instant now;

  public TestClock(String now) {
    this.now = Instant.parse(now);
  }

  @Override
  public synchronized Instant instant() {
    return now;
  }

  public synchronized void forward(Duration by) {
    now = now.plus(by);
  }
}
