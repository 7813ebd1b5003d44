package loopwright.db;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import loopwright.problem.Refused;

/**
 * One writer at a time on the embedded engine. When several commit side by side and the process is
 * killed, H2 may bring back a later commit without an earlier one: entry 61 of the journal without
 * entry 60, neither of them acknowledged (seen in 2 of 40 kills with three writers; with turns in
 * none of 60). A database server needs no turns.
 */
final class WriteTurn {
  /** So long somebody waits for others before being told to come back. */
  static final Duration USUAL_PATIENCE = Duration.ofSeconds(20);

  private final ReentrantLock lock = new ReentrantLock(true);
  private final boolean needed;
  private final Duration patience;

  WriteTurn(boolean needed, Duration patience) {
    this.needed = needed;
    this.patience = patience;
  }

  /**
   * @throws Refused {@link DbProblem#BUSY} if others write for too long
   */
  <R> R take(Supplier<R> work) {
    if (!needed) {
      return work.get();
    }
    waitForTurn();
    try {
      return work.get();
    } finally {
      lock.unlock();
    }
  }

  private void waitForTurn() {
    try {
      if (!lock.tryLock(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        throw new Refused(DbProblem.BUSY);
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw new Refused(DbProblem.BUSY);
    }
  }
}
