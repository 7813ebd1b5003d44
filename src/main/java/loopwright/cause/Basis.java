package loopwright.cause;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** On what a diagnosis rests, with the mark of each number's source. */
final class Basis {
  private Basis() {}

  static List<String> of(Situation situation) {
    LengthLaw law = situation.lawHere();
    return List.of(
        String.format(
            Locale.ROOT,
            "A wrong total length changes the curve by (system length / fitted length)ⁿ, n = %.2f ± %.2f,"
                + " and by %.2f ± %.2f per mm of gap more of it (standard uncertainties);"
                + " common practice and simulation, no source.",
            law.n(),
            law.nUncertainty(),
            law.c(),
            law.cUncertainty()),
        String.format(
            Locale.ROOT,
            "Before measuring, half a metre too much or too little counts %.2f times as likely as a"
                + " whole metre; common practice, no source.",
            WrongLength.halfToWhole()),
        "How likely each cause is before measuring ("
            + situation.priors().origin()
            + "): "
            + weights(situation.priors())
            + ".");
  }

  /** All of them, in parts of a hundred. */
  private static String weights(Priors priors) {
    double sum = Arrays.stream(Cause.values()).mapToDouble(priors::of).sum();
    return Arrays.stream(Cause.values())
        .filter(cause -> priors.of(cause) > 0)
        .map(cause -> cause.label() + " " + percent(priors.of(cause) / sum))
        .collect(Collectors.joining(", "));
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, share < 0.1 ? "%.1f %%" : "%.0f %%", 100 * share);
  }
}
