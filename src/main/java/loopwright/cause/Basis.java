package loopwright.cause;

import java.util.List;
import java.util.Locale;

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
        "How likely each cause is before measuring: common practice, no source.");
  }
}
