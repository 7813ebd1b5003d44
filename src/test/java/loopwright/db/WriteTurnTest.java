package loopwright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import loopwright.problem.Refused;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class WriteTurnTest {
  private final CountDownLatch begun = new CountDownLatch(1);
  private final CountDownLatch leave = new CountDownLatch(1);

  @AfterEach
  void letGo() {
    leave.countDown();
  }

  /** Somebody who has the turn until told to leave. */
  private CompletableFuture<String> somebodyWrites(WriteTurn turn) throws InterruptedException {
    CompletableFuture<String> first =
        CompletableFuture.supplyAsync(
            () ->
                turn.take(
                    () -> {
                      begun.countDown();
                      await(leave);
                      return "first";
                    }));
    assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
    return first;
  }

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(30, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException stopped) {
      throw new IllegalStateException(stopped);
    }
  }

  @Test
  void whoeverWaitsTooLongIsToldToComeBack() throws Exception {
    WriteTurn turn = new WriteTurn(true, Duration.ofMillis(20));
    CompletableFuture<String> first = somebodyWrites(turn);
    assertThatThrownBy(() -> turn.take(() -> "second"))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(DbProblem.BUSY));
    leave.countDown();
    assertThat(first.get(30, TimeUnit.SECONDS)).isEqualTo("first");
    assertThat(turn.take(() -> "afterwards")).isEqualTo("afterwards");
  }

  @Test
  void theTurnIsGivenBackWhenTheWorkFails() {
    WriteTurn turn = new WriteTurn(true, Duration.ofMillis(20));
    assertThatThrownBy(
            () ->
                turn.take(
                    () -> {
                      throw new IllegalStateException("failed");
                    }))
        .isInstanceOf(IllegalStateException.class);
    assertThat(CompletableFuture.supplyAsync(() -> turn.take(() -> "next")).join())
        .isEqualTo("next");
  }

  @Test
  void aServerNeedsNoTurns() throws Exception {
    WriteTurn turn = new WriteTurn(false, Duration.ofMillis(20));
    CompletableFuture<String> first = somebodyWrites(turn);
    assertThat(turn.take(() -> "beside")).isEqualTo("beside");
    assertThat(first).isNotDone();
  }
}
