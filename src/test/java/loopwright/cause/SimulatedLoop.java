package loopwright.cause;

/**
 * A loop as a circuit, simulated; synthetic, of the right order of magnitude only. It shares no
 * formula with the cause finder and doesn't follow its length law.
 *
 * <p>The coil over its target is a transformer with a lossy secondary, coupling falling
 * exponentially with the gap; the values are fitted to a coil of 90 turns over 4140 at 1 MHz (own
 * calculation after Dodd and Deeds: 27.7 Ω and 24.7 µH at 10 mil, 14.4 Ω and 25.4 µH at 50 mil).
 * The cable is a transmission line with loss, 75 Ω and 67 pF/m (trade data, from memory). The
 * driver oscillates where the tank of coil, line and its capacitor is resistive; the smaller the
 * tank, the higher the carrier and the more a metre of line matters. A lineariser, fixed for the
 * design length and the nominal coil, turns amplitude into volts.
 */
final class SimulatedLoop {
  private static final double NOMINAL_VOLTS_PER_MM = 200 / 25.4;
  private static final double HIGHEST_VOLTS = -0.6;

  private final Circuit nominal;
  private Circuit circuit;
  private double lowestVolts = -22.5;

  /** One that is right, of that design. */
  SimulatedLoop(Circuit design) {
    this.nominal = design;
    this.circuit = nominal;
  }

  /**
   * What the driver sees.
   *
   * @param lineMetres of cable
   * @param capacitor of the driver, F
   * @param resistance of the coil, Ω
   * @param coupling k² at a gap of 0.254 mm
   * @param secondaryQ of the target: its reactance over its resistance
   * @param leak across the connector at the coil, S
   * @param wet capacitance across it, F
   */
  record Circuit(
      double lineMetres,
      double capacitor,
      double resistance,
      double coupling,
      double secondaryQ,
      double leak,
      double wet) {
    private static final double COIL = 26.4e-6;
    private static final double COUPLING_PER_MM = 1.05;
    private static final double LINE_CAPACITANCE = 67e-12;
    private static final double LINE_INDUCTANCE = 75 * 75 * LINE_CAPACITANCE;
    private static final double LINE_RESISTANCE = 0.4;

    /**
     * Of the nominal coil.
     *
     * @param tank capacitance of line and driver, F
     */
    static Circuit nominal(double metres, double tank) {
      return new Circuit(metres, tank - LINE_CAPACITANCE * metres, 8.0, 0.287, 0.53, 0, 0);
    }

    /** The tank's resistance, which the amplitude follows; how exactly, the lineariser undoes. */
    double amplitude(double millimetres) {
      double low = 2 * Math.PI * 0.4e6;
      double high = 2 * Math.PI * 2.5e6;
      for (int i = 0; i < 60; i++) {
        double middle = (low + high) / 2;
        if (admittance(middle, millimetres).im() < 0) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return 1 / admittance((low + high) / 2, millimetres).re();
    }

    private Complex admittance(double omega, double millimetres) {
      double square = coupling * Math.exp(-COUPLING_PER_MM * (millimetres - 0.254));
      double share = square / (1 + secondaryQ * secondaryQ);
      Complex coil =
          new Complex(
              resistance + omega * COIL * share * secondaryQ,
              omega * COIL * (1 - share * secondaryQ * secondaryQ));
      Complex end = coil.inverse().plus(new Complex(leak, omega * wet)).inverse();
      Complex series = new Complex(LINE_RESISTANCE, omega * LINE_INDUCTANCE);
      Complex shunt = new Complex(0, omega * LINE_CAPACITANCE);
      Complex wave = series.over(shunt).root();
      Complex turn = series.times(shunt).root().times(new Complex(lineMetres, 0)).tanh();
      Complex seen = wave.times(end.plus(wave.times(turn)).over(wave.plus(end.times(turn))));
      return seen.inverse().plus(new Complex(0, omega * capacitor));
    }

    Circuit withLine(double metres) {
      return new Circuit(metres, capacitor, resistance, coupling, secondaryQ, leak, wet);
    }

    Circuit withCoil(double ohm, double squared, double q) {
      return new Circuit(lineMetres, capacitor, ohm, squared, q, leak, wet);
    }

    Circuit withConnector(double siemens, double farad) {
      return new Circuit(lineMetres, capacitor, resistance, coupling, secondaryQ, siemens, farad);
    }
  }

  SimulatedLoop with(Circuit other) {
    circuit = other;
    return this;
  }

  Circuit circuit() {
    return circuit;
  }

  SimulatedLoop clippedAt(double volts) {
    lowestVolts = volts;
    return this;
  }

  /** Output at a gap in µm. */
  double volts(double gapMicrometres) {
    double straight = -NOMINAL_VOLTS_PER_MM * linearised(circuit.amplitude(gapMicrometres / 1000));
    double fade = 0.3;
    double clipped = lowestVolts + fade * Math.log1p(Math.exp((straight - lowestVolts) / fade));
    return Math.min(HIGHEST_VOLTS, clipped);
  }

  /** mV/µm, by a central difference of 7 mil pk-pk. */
  double sensitivity(double gapMicrometres) {
    double half = 3.5 * 25.4;
    return 1000 * (volts(gapMicrometres - half) - volts(gapMicrometres + half)) / (2 * half);
  }

  /** The gap in µm at which the output is that. */
  double gapFor(double volts) {
    double low = 100;
    double high = 4000;
    for (int i = 0; i < 50; i++) {
      double middle = (low + high) / 2;
      if (volts(middle) > volts) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** The gap in mm at which the nominal loop has that amplitude. */
  private double linearised(double amplitude) {
    double low = -1.0;
    double high = 6.0;
    for (int i = 0; i < 50; i++) {
      double middle = (low + high) / 2;
      if (nominal.amplitude(middle) < amplitude) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Just enough complex arithmetic. */
  record Complex(double re, double im) {
    Complex plus(Complex other) {
      return new Complex(re + other.re, im + other.im);
    }

    Complex times(Complex other) {
      return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Complex inverse() {
      double square = re * re + im * im;
      return new Complex(re / square, -im / square);
    }

    Complex over(Complex other) {
      return times(other.inverse());
    }

    Complex root() {
      double length = Math.hypot(re, im);
      return new Complex(
          Math.sqrt((length + re) / 2), Math.copySign(Math.sqrt((length - re) / 2), im));
    }

    Complex tanh() {
      double below = Math.cosh(2 * re) + Math.cos(2 * im);
      return new Complex(Math.sinh(2 * re) / below, Math.sin(2 * im) / below);
    }
  }
}
