package loopwright.cause;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Where on its way volts and sensitivity were taken. */
public enum TappingPoint {
  DRIVER(0.01),
  BARRIER(0.025),
  RACK(0.02),
  MONITOR(0.02);

  private final double loadingPrior;

  TappingPoint(double loadingPrior) {
    this.loadingPrior = loadingPrior;
  }

  double loadingPrior() {
    return loadingPrior;
  }

  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<TappingPoint> named(String word) {
    String plain = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(point -> point.label().equals(plain)).findFirst();
  }

  /** The names, for a sentence. */
  static String choices() {
    return Arrays.stream(values()).map(TappingPoint::label).collect(Collectors.joining(", "));
  }
}
