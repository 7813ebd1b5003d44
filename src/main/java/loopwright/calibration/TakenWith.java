package loopwright.calibration;

import java.util.Optional;
import loopwright.loop.PartSet;
import org.jspecify.annotations.Nullable;

/** Which parts a calibration about to be kept was taken with, and where. */
public sealed interface TakenWith {
  Setup setup();

  /** At which it was taken; null on the bench. */
  @Nullable Long atPoint();

  /** The parts, where they are not simply those fitted at the point. */
  Optional<PartSet> parts();

  /** What was fitted at the point at that moment. */
  record Fitted(long point) implements TakenWith {
    @Override
    public Setup setup() {
      return Setup.FITTED;
    }

    @Override
    public Long atPoint() {
      return point;
    }

    @Override
    public Optional<PartSet> parts() {
      return Optional.empty();
    }
  }

  /** Parts that were fitted together nowhere. */
  record Bench(PartSet set) implements TakenWith {
    @Override
    public Setup setup() {
      return Setup.BENCH;
    }

    @Override
    public @Nullable Long atPoint() {
      return null;
    }

    @Override
    public Optional<PartSet> parts() {
      return Optional.of(set);
    }
  }

  /**
   * At the point, but not with what is fitted there.
   *
   * @param set what was really measured
   */
  record StoodIn(long point, PartSet set) implements TakenWith {
    @Override
    public Setup setup() {
      return Setup.STOOD_IN;
    }

    @Override
    public Long atPoint() {
      return point;
    }

    @Override
    public Optional<PartSet> parts() {
      return Optional.of(set);
    }
  }
}
