package loopwright.cause;

/** What is believed about where the probe stands, before its output was read. */
enum GapBelief {
  /** Where it was set, or nearly so. */
  AS_SET {
    @Override
    double density(Spreads spreads, double gap, double volts, double slope) {
      double distance = gap - spreads.setGap();
      return Student8.density(distance, spreads.ofSetGap()) * 1000 / slope;
    }
  },
  /** Moved until the voltage looked right. */
  REGAPPED {
    @Override
    double density(Spreads spreads, double gap, double volts, double slope) {
      return Student8.density(volts - spreads.setVolts(), spreads.ofRegappedVolts());
    }
  },
  /** Anywhere in the range. */
  ANYWHERE {
    @Override
    double density(Spreads spreads, double gap, double volts, double slope) {
      double distance = gap - spreads.setGap();
      return Student8.density(distance, spreads.ofFreeGap()) * 1000 / slope;
    }
  },
  /** Any of these, as set being likeliest. */
  UNKNOWN {
    @Override
    double density(Spreads spreads, double gap, double volts, double slope) {
      return 0.55 * AS_SET.density(spreads, gap, volts, slope)
          + 0.35 * REGAPPED.density(spreads, gap, volts, slope)
          + 0.10 * ANYWHERE.density(spreads, gap, volts, slope);
    }
  };

  /**
   * Density per V of finding that output.
   *
   * @param gap µm that gives it
   * @param volts V
   * @param slope of the output there, mV/µm
   */
  abstract double density(Spreads spreads, double gap, double volts, double slope);
}
