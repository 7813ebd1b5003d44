package loopwright.protection;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a monitor channel was told, as far as it turns volts into levels.
 *
 * @param name rack, slot and channel
 * @param scaleFactor S_c, mV/µm; empty where it isn't recorded
 * @param setPoints for vibration peak to peak, for positions on both sides of zero
 * @param okVolts the OK limits there are, V
 * @param zeroVolts V that stands for position zero
 * @param positive +1 where movement toward the probe counts as positive, −1 where away; 0 where it
 *     isn't recorded
 */
public record MonitorTold(
    String name,
    OptionalDouble scaleFactor,
    List<SetPoint> setPoints,
    List<Double> okVolts,
    OptionalDouble zeroVolts,
    int positive) {
  public MonitorTold {
    setPoints = List.copyOf(setPoints);
    okVolts = List.copyOf(okVolts);
  }
}
