package loopwright.units;

/** What a unit measures. Gaps and cable lengths are kept apart: nobody types a cable in mil. */
public enum Dimension {
  /** Distance between probe tip and target, or a displacement; µm inside. */
  GAP,
  /** Nominal or measured length of a lead or cable; m inside. */
  LENGTH,
  /** Driver output, supply; V inside. */
  VOLTAGE,
  /** Sensitivity of a loop; mV/µm inside, positive. */
  SCALE_FACTOR,
  /** Frequency or speed; Hz inside. */
  FREQUENCY,
  /** °C inside. */
  TEMPERATURE,
  /** Ω inside. */
  RESISTANCE,
  /** A delay; s inside. */
  DURATION,
  /** Phase; ° inside. */
  ANGLE,
  /** A share of something; 1 inside. */
  RATIO,
  /** A ratio of amplitudes; dB inside. */
  LEVEL,
  /** Of a cable; pF/m inside. */
  CAPACITANCE_PER_LENGTH
}
