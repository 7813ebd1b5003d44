package loopwright.plant;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/** Numbers that are kept with a limited number of decimals: more are refused, never rounded off. */
final class Decimals {
  private Decimals() {}

  static void refuseMore(String what, @Nullable BigDecimal number, int decimals, int before) {
    if (number == null) {
      return;
    }
    BigDecimal plain = number.stripTrailingZeros();
    if (plain.scale() > decimals || plain.precision() - plain.scale() > before) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE,
          what,
          number.toPlainString(),
          "at most " + before + " digits before the decimal mark and " + decimals + " after it");
    }
  }
}
