package loopwright.importing;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/** Plans that wait to be run, and those that were, for a while. Shared by request threads. */
final class Shelf {
  static final Duration KEPT = Duration.ofMinutes(60);
  private static final int MOST = 20;

  private final InstantSource clock;
  private final Map<String, Kept> kept = new LinkedHashMap<>();

  Shelf(InstantSource clock) {
    this.clock = clock;
  }

  /** A plan with what its run needs. One thread at a time runs it. */
  static final class Kept {
    final ImportPlan plan;
    final List<ImportFile> files;
    final Optional<DecimalMark> mark;
    final long head;
    final List<Step> steps;
    @Nullable ImportReceipt receipt;

    Kept(
        ImportPlan plan,
        List<ImportFile> files,
        Optional<DecimalMark> mark,
        long head,
        List<Step> steps) {
      this.plan = plan;
      this.files = files;
      this.mark = mark;
      this.head = head;
      this.steps = steps;
    }
  }

  synchronized void put(Kept plan) {
    forget();
    while (kept.size() >= MOST) {
      Iterator<String> oldest = kept.keySet().iterator();
      oldest.next();
      oldest.remove();
    }
    kept.put(plan.plan.id(), plan);
  }

  /**
   * @throws Refused {@link ImportProblem#NO_PLAN} when it is forgotten or never was
   */
  synchronized Kept needed(String id) {
    forget();
    Kept found = kept.get(id);
    if (found == null) {
      throw new Refused(ImportProblem.NO_PLAN, KEPT.toMinutes());
    }
    return found;
  }

  private void forget() {
    Instant oldest = clock.instant().minus(KEPT);
    kept.values().removeIf(plan -> plan.plan.madeAt().isBefore(oldest));
  }
}
