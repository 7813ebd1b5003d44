package loopwright.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import loopwright.demo.LoopStory.Fitting;

/**
 * Takes a curve of a made-up loop the way a shop does: the micrometer is set to each gap with a
 * little error, the meter shows a little noise and so many digits. The same loop, parts and moment
 * always give the same readings.
 */
final class DemoReadings {
  private static final double MIL = 25.4;

  /** Of setting a gap, µm. */
  private static final double GAP_ERROR = 0.7;

  /** Of the meter, V. */
  private static final double METER_NOISE = 0.003;

  /** Lost motion of the micrometer on the way back, µm. */
  private static final double LOST_MOTION = 1.5;

  record Reading(String run, String gap, String volts) {}

  private DemoReadings() {}

  static List<Reading> of(LoopStory loop, LoopStory.Curve curve) {
    boolean inMil = loop.point.inMil();
    Random dice = new Random((loop.point.tag() + curve.at() + curve.stage()).hashCode());
    VoltageModel model = model(loop, curve);
    double shift = curve.gapsFromVolts() ? shift(curve.fitting(), model) : 0;
    List<Integer> gaps = gaps(curve.fitting().driver().family, inMil);
    List<Reading> readings = new ArrayList<>();
    for (int gap : gaps) {
      readings.add(reading("up", gap, inMil, shift, model, dice));
    }
    if (loop.point.isAxial()) {
      for (int i = gaps.size() - 1; i >= 0; i--) {
        readings.add(reading("down", gaps.get(i), inMil, shift + LOST_MOTION, model, dice));
      }
    }
    return readings;
  }

  private static List<Integer> gaps(DemoFamily family, boolean inMil) {
    int step = inMil ? 10 : family.hasLongRange() ? 500 : 250;
    List<Integer> gaps = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      gaps.add(i * step);
    }
    return gaps;
  }

  /** How far the probe really stands when its gap was set by voltage alone. */
  private static double shift(Fitting fitting, VoltageModel model) {
    DemoFamily family = fitting.driver().family;
    return model.gapAt(family.midVolts()) - family.nature.midMicrometres();
  }

  private static Reading reading(
      String run, int gap, boolean inMil, double shift, VoltageModel model, Random dice) {
    double set = gap * (inMil ? MIL : 1) + shift + GAP_ERROR * limited(dice);
    double volts = model.volts(set) + METER_NOISE * limited(dice);
    return new Reading(
        run, String.valueOf(gap), String.format(Locale.ROOT, inMil ? "%.2f" : "%.3f", volts));
  }

  private static VoltageModel model(LoopStory loop, LoopStory.Curve curve) {
    Fitting fitting = curve.fitting();
    DemoFamily family = fitting.driver().family;
    boolean drifts = loop.point.tag().equals(DemoFaults.DRIFTING);
    double drift = drifts ? DemoFaults.DRIFT.getOrDefault(curve.at().day().getYear(), 0.0) : 0;
    return new VoltageModel(
        family.nature,
        trait(fitting, curve.damage(), drifts),
        fitting.fittedMetres() + curve.damage().metres(),
        fitting.driver().trueMetres,
        drift);
  }

  /** Peculiar to exactly these parts: the same parts give the same trait again. */
  private static VoltageModel.Trait trait(
      Fitting fitting, LoopStory.Damage damage, boolean startsCentred) {
    String cable = fitting.cable() == null ? "" : fitting.cable().label();
    Random dice =
        new Random((fitting.probe().label() + cable + fitting.driver().label()).hashCode());
    double scale = fitting.driver().family.hasLongRange() ? 2 : 1;
    double gain = startsCentred ? 0 : 0.005 * limited(dice);
    return new VoltageModel.Trait(
        gain,
        scale * 3 * limited(dice) + damage.bowMicrometres(),
        scale * 2 * limited(dice),
        0.08 * limited(dice));
  }

  /** Normal, cut off at two standard deviations: what is worse the shop would have sorted out. */
  private static double limited(Random dice) {
    double drawn = dice.nextGaussian();
    return Math.max(-2, Math.min(2, drawn));
  }
}
