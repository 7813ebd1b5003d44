package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a slow-roll vector says of the track, and how it moved since the last one. */
final class SlowRollJudge {
  /** µm pk-pk. */
  private static final double ALWAYS_ALLOWED = 6.35;

  private static final double SHARE = 0.25;
  private static final String BASIS =
      "run-out at most the larger of 25 % of the allowed vibration and 6.35 µm, after API Std 617,"
          + " 670 and RP 687 (from memory; no clause confirmed)";

  private SlowRollJudge() {}

  static List<Said> judge(Entries entries, Background background) {
    List<Said> said = new ArrayList<>();
    entries.amount("amplitude").ifPresent(size -> said.add(runOut(size, entries)));
    Optional<Vector> now = Vector.of(entries);
    Optional<Vector> before = background.before().map(FieldCheck::entries).flatMap(Vector::of);
    if (now.isPresent() && before.isPresent()) {
      said.add(
          Said.only(
              "change",
              "The vector moved by %s pk-pk since the last one."
                  .formatted(Amounts.gap(now.get().distanceTo(before.get())))));
    }
    return said;
  }

  private static Said runOut(double size, Entries entries) {
    Optional<Double> allowed = entries.amount("allowed");
    if (allowed.isEmpty() && size > ALWAYS_ALLOWED) {
      return Said.only(
          "run-out",
          Amounts.gap(size)
              + " is more than 6.35 µm (0.25 mil); whether it may stay depends on the allowed"
              + " vibration, which isn't given.");
    }
    double limit = Math.max(ALWAYS_ALLOWED, SHARE * allowed.orElse(0.0));
    return Said.judged(
        size <= limit * (1 + 1e-9),
        "run-out",
        "%s of %s allowed.".formatted(Amounts.gap(size), Amounts.gap(limit)),
        BASIS);
  }

  /**
   * Amplitude and phase as a vector; a phase counted as lead is the same lag with the other sign.
   *
   * @param size µm pk-pk
   * @param lagRadians counted as lag
   */
  record Vector(double size, double lagRadians) {
    static Optional<Vector> of(Entries entries) {
      Optional<Double> size = entries.amount("amplitude");
      Optional<Double> phase = entries.amount("phase");
      String as = entries.word("phase-as");
      if (size.isEmpty() || phase.isEmpty() || as.isEmpty()) {
        return Optional.empty();
      }
      double lag = as.equals("lead") ? -phase.get() : phase.get();
      return Optional.of(new Vector(size.get(), Math.toRadians(lag)));
    }

    double distanceTo(Vector other) {
      double x = size * Math.cos(lagRadians) - other.size * Math.cos(other.lagRadians);
      double y = size * Math.sin(lagRadians) - other.size * Math.sin(other.lagRadians);
      return Math.hypot(x, y);
    }
  }
}
