package loopwright.cause;

import java.util.Arrays;
import java.util.List;

/**
 * What could be measured next, and how much it would tell. Its possible outcomes are a row of
 * classes; each variant says how probable each class is under it.
 */
public enum NextMeasurement {
  LABELS(
      "Read the markings of probe, extension cable and driver, or scan their labels: lengths, family,"
          + " serials.") {
    private static final double READ_RIGHT = 0.97;

    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      double[] outcomes = new double[LENGTH_CLASSES + 3];
      Arrays.fill(outcomes, (1 - READ_RIGHT) / (outcomes.length - 1));
      Signs signs = weighed.variant().signs();
      int seen =
          switch (signs.labels()) {
            case AS_RECORDED -> 0;
            case OTHER_DRIVER -> 1;
            case OTHER_PART -> 2;
            case OTHER_LENGTH -> 3 + lengthClass(signs.extraMetres());
          };
      outcomes[seen] = READ_RIGHT;
      return outcomes;
    }
  },
  CAPACITANCE(
      "Unplug the extension cable at both ends and measure its capacitance: half a metre makes 25 to"
          + " 35 pF.") {
    private static final double METER = 0.15;

    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      Signs signs = weighed.variant().signs();
      return spread(
          signs.extraMetres(), Math.hypot(METER, signs.extraSpread()), -MOST_EXTRA, MOST_EXTRA);
    }
  },
  STATIC_CURVE(
      "Take a static curve of the chain as it is fitted, stopped and under permit: level and trend"
          + " of ISF tell a wrong length from a moved gap.") {
    private static final double READING = 0.008;

    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      boolean distorted = weighed.variant().signs().curveIsDistorted();
      double level = distorted ? weighed.tally().distortion().lnFactor() : 0;
      return spread(level, READING, -0.5, 0.5);
    }
  },
  SECOND_GAP(
      "Read the output at a second gap a known turn of the thread away, stopped and under permit:"
          + " the true sensitivity without a vibration reference.") {
    private static final double THREAD = 0.02;

    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      boolean shown = weighed.variant().signs().slopeIsShown();
      Distortion distortion = weighed.tally().distortion();
      double ratio =
          Math.log(situation.seen().sensitivity() / situation.baseline().setSensitivity());
      return spread(shown ? ratio : distortion.lnFactor(), THREAD, -0.6, 0.6);
    }
  },
  CONNECTOR("Clean and dry the connector, then read volts and sensitivity again.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.CONNECTOR, 0.85);
    }
  },
  SUPPLY("Measure the supply at the driver's terminals.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.SUPPLY, 0.95);
    }
  },
  RESISTANCE(
      "Measure the coil's resistance through the cable: it finds opens and shorts, but proves no"
          + " length (0.14 Ω for half a metre against ±0.5 Ω).") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.RESISTANCE, 0.95);
    }
  },
  WIRING("Follow the field wires from the driver to the channel, terminal by terminal.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.WIRING, 0.95);
    }
  },
  SECOND_METER(
      "Take both numbers again at the driver's terminals with another meter of at least 1 MΩ, and"
          + " another reference.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.METER, 0.9);
    }
  },
  MONITOR_SETTING("Read the scale factor that the monitor is set to.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.MONITOR, 0.97);
    }
  },
  INSTALLATION(
      "Look at the installation: target alloy, bore and edges beside the tip, the next probe.") {
    @Override
    double[] outcomes(Weighed weighed, Situation situation) {
      return special(weighed, Signs.Special.INSTALLATION, 0.9);
    }
  };

  private static final int LENGTH_CLASSES = 17;
  private static final double MOST_EXTRA = 2.25;
  private static final double FALSE_ALARM = 0.03;
  private static final int CLASSES = 41;

  private final String sentence;

  NextMeasurement(String sentence) {
    this.sentence = sentence;
  }

  /** What to do, for a person. */
  public String sentence() {
    return sentence;
  }

  /** Probabilities of the classes of outcome; they add up to 1. */
  abstract double[] outcomes(Weighed weighed, Situation situation);

  /**
   * Expected information about which cause and which length it is, in bits.
   *
   * @param weighed all variants; those of one cause and length count as one answer
   */
  double information(List<Weighed> weighed, Situation situation) {
    return Information.expected(weighed, each -> outcomes(each, situation));
  }

  private static int lengthClass(double extra) {
    double step = 2 * MOST_EXTRA / LENGTH_CLASSES;
    return (int) Math.max(0, Math.min(LENGTH_CLASSES - 1, Math.floor((extra + MOST_EXTRA) / step)));
  }

  private static double[] special(Weighed weighed, Signs.Special answering, double found) {
    boolean answers = weighed.variant().signs().special() == answering;
    double yes = answers ? found : FALSE_ALARM;
    return new double[] {yes, 1 - yes};
  }

  private static double[] spread(double middle, double deviation, double from, double to) {
    double[] outcomes = new double[CLASSES];
    double step = (to - from) / (CLASSES - 1);
    double wide = Math.hypot(deviation, step / 2);
    double clamped = Math.max(from, Math.min(to, middle));
    Arrays.setAll(outcomes, i -> Math.exp(-0.5 * Math.pow((from + i * step - clamped) / wide, 2)));
    double sum = Arrays.stream(outcomes).sum();
    return Arrays.stream(outcomes).map(o -> o / sum).toArray();
  }
}
