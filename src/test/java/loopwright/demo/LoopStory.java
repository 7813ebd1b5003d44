package loopwright.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What was fitted at one point over the years, and the curves that were taken there. */
final class LoopStory {
  /** The parts in place from a moment on. */
  record Fitting(
      DemoMoment from, DemoPart probe, @Nullable DemoPart cable, DemoPart driver, String note) {

    double fittedMetres() {
      return probe.trueMetres + (cable == null ? 0 : cable.trueMetres);
    }

    Fitting with(DemoPart part, DemoMoment at, String why) {
      return switch (part.kind) {
        case "probe" -> new Fitting(at, part, cable, driver, why);
        case "driver" -> new Fitting(at, probe, cable, part, why);
        default -> new Fitting(at, probe, part, driver, why);
      };
    }

    DemoPart in(String slot) {
      return switch (slot) {
        case "probe" -> probe;
        case "driver" -> driver;
        default -> Optional.ofNullable(cable).orElseThrow();
      };
    }
  }

  /**
   * A curve that was taken, or tried.
   *
   * @param damage what was wrong with the parts that day
   * @param gapsFromVolts gaps counted from the voltage the probe was set to, not from touch
   * @param noCurve why there is none; empty when there is
   */
  record Curve(
      DemoMoment at,
      String stage,
      Fitting fitting,
      Damage damage,
      boolean gapsFromVolts,
      String noCurve) {}

  /**
   * @param metres cable length that the damage looks like
   * @param bowMicrometres extra bow
   */
  record Damage(double metres, double bowMicrometres) {
    static final Damage NONE = new Damage(0, 0);
  }

  final DemoPoint point;
  final List<Fitting> fittings = new ArrayList<>();
  final List<Curve> curves = new ArrayList<>();

  LoopStory(DemoPoint point, Fitting first) {
    this.point = point;
    fittings.add(first);
  }

  Fitting now() {
    return fittings.get(fittings.size() - 1);
  }

  void exchange(DemoPart part, DemoMoment at, String why) {
    fittings.add(now().with(part, at, why));
  }

  void curve(DemoMoment at, String stage) {
    curve(at, stage, Damage.NONE, "");
  }

  void curve(DemoMoment at, String stage, Damage damage, String noCurve) {
    curves.add(new Curve(at, stage, now(), damage, false, noCurve));
  }

  void curveFromVolts(DemoMoment at, String stage) {
    curves.add(new Curve(at, stage, now(), Damage.NONE, true, ""));
  }
}
