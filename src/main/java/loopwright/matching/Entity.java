package loopwright.matching;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Entity parameters of an intrinsically safe circuit, from a certificate. Of a driver or
 * transmitter they are the inputs Ui, Ii, Pi, Ci, Li that it stands and stores; of a barrier or
 * isolator the outputs Uo, Io, Po that it lets through and Co, Lo that it allows to be connected.
 *
 * @param volts Ui or Uo, V
 * @param milliamperes Ii or Io, mA
 * @param milliwatts Pi or Po, mW
 * @param nanofarads Ci or Co, nF
 * @param microhenries Li or Lo, µH
 */
public record Entity(
    @Nullable BigDecimal volts,
    @Nullable BigDecimal milliamperes,
    @Nullable BigDecimal milliwatts,
    @Nullable BigDecimal nanofarads,
    @Nullable BigDecimal microhenries) {
  public static final Entity NOT_GIVEN = new Entity(null, null, null, null, null);

  /** V, mA, mW, nF, µH. */
  public static Entity of(
      String volts,
      String milliamperes,
      String milliwatts,
      String nanofarads,
      String microhenries) {
    return new Entity(
        new BigDecimal(volts),
        new BigDecimal(milliamperes),
        new BigDecimal(milliwatts),
        new BigDecimal(nanofarads),
        new BigDecimal(microhenries));
  }

  public boolean isNotGiven() {
    return equals(NOT_GIVEN);
  }
}
