package loopwright.dynamic;

import java.util.Arrays;
import java.util.Optional;

/**
 * How the size of a sine is given. The relations are exact for a sine and for nothing else: peak is
 * half of peak to peak, rms is peak/√2.
 */
public enum Amplitude {
  PEAK_TO_PEAK("pk-pk", 1),
  PEAK("peak", 2),
  RMS("rms", 2 * Math.sqrt(2));

  private final String word;
  private final double toPeakToPeak;

  Amplitude(String word, double toPeakToPeak) {
    this.word = word;
    this.toPeakToPeak = toPeakToPeak;
  }

  public String word() {
    return word;
  }

  /** Peak to peak, in the unit given. */
  public double toPeakToPeak(double size) {
    return size * toPeakToPeak;
  }

  /** The size of this kind, in the unit given. */
  public double fromPeakToPeak(double peakToPeak) {
    return peakToPeak / toPeakToPeak;
  }

  public static Optional<Amplitude> named(String word) {
    return Arrays.stream(values()).filter(each -> each.word.equals(word.strip())).findFirst();
  }
}
