package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ThrottleTest {
  private Instant now = Instant.parse("2026-11-24T08:00:00Z");
  private final Throttle throttle = new Throttle(() -> now);

  @Test
  void fiveTriesThenOneAMinute() {
    for (int i = 0; i < Throttle.TRIES; i++) {
      assertThat(throttle.take("someone", "10.0.0.1")).isZero();
    }
    assertThat(throttle.take("someone", "10.0.0.1")).isEqualTo(Duration.ofMinutes(1));
    now = now.plusSeconds(59);
    assertThat(throttle.take("someone", "10.0.0.1")).isEqualTo(Duration.ofSeconds(1));
    now = now.plusSeconds(1);
    assertThat(throttle.take("someone", "10.0.0.1")).isZero();
    assertThat(throttle.take("someone", "10.0.0.1")).isPositive();
  }

  @Test
  void aLoginInOtherLettersIsTheSameAndAnotherAddressIsNot() {
    for (int i = 0; i < Throttle.TRIES; i++) {
      throttle.take("someone", "10.0.0.1");
    }
    assertThat(throttle.take(" SomeOne", "10.0.0.1")).isPositive();
    assertThat(throttle.take("someone", "10.0.0.2")).isZero();
    assertThat(throttle.take("other", "10.0.0.1")).isZero();
  }

  @Test
  void theRightPasswordClearsTheSlips() {
    for (int i = 0; i < Throttle.TRIES; i++) {
      throttle.take("someone", "10.0.0.1");
    }
    throttle.forget("someone", "10.0.0.1");
    assertThat(throttle.take("someone", "10.0.0.1")).isZero();
  }

  @Test
  void madeUpLoginsDoNotPushOutTheOneBeingGuessed() {
    for (int i = 0; i < Throttle.TRIES; i++) {
      throttle.take("someone", "10.0.0.1");
    }
    for (int i = 0; i < 9_000; i++) {
      throttle.take("made-up-" + i, "10.0.0.1");
    }
    assertThat(throttle.take("someone", "10.0.0.1")).isPositive();
  }
}
