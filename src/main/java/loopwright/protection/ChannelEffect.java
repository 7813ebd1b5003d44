package loopwright.protection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a loop's curve does to one monitor channel.
 *
 * @param channel its name
 * @param missing what isn't recorded, so that something stays open; in words
 */
public record ChannelEffect(
    String channel,
    Optional<VibrationEffect> vibration,
    Optional<PositionEffect> position,
    List<OkGap> okGaps,
    List<String> missing) {

  /** What a channel makes of the output. */
  public enum Reading {
    VIBRATION,
    POSITION,
    /** A mark once a turn, or nothing that is known: no level. */
    NO_LEVEL
  }

  /**
   * The loop behind the channel.
   *
   * @param now its curve
   * @param before the curve it had when it was right
   * @param setGap where the probe stands, µm, within the curve
   * @param ramp that a position is measured on
   */
  public record Loop(
      Reading reading, OutputCurve now, Optional<OutputCurve> before, double setGap, Ramp ramp) {}

  public static ChannelEffect of(Loop loop, MonitorTold told) {
    List<String> missing = new ArrayList<>();
    if (loop.reading() != Reading.NO_LEVEL && told.setPoints().isEmpty()) {
      missing.add("set points");
    }
    Optional<VibrationEffect> vibration = Optional.empty();
    Optional<PositionEffect> position = Optional.empty();
    if (loop.reading() != Reading.NO_LEVEL && told.scaleFactor().isEmpty()) {
      missing.add("scale factor");
    } else if (loop.reading() == Reading.VIBRATION) {
      vibration = Optional.of(vibration(loop, told));
    } else if (loop.reading() == Reading.POSITION) {
      position = position(loop, told, missing);
    }
    return new ChannelEffect(
        told.name(),
        vibration,
        position,
        OkGap.of(told.okVolts(), loop.now(), loop.before()),
        List.copyOf(missing));
  }

  private static VibrationEffect vibration(Loop loop, MonitorTold told) {
    return VibrationEffect.of(
        loop.now(),
        loop.setGap(),
        told.scaleFactor().orElseThrow(),
        told.setPoints().stream().filter(point -> point.level().signum() > 0).toList());
  }

  private static Optional<PositionEffect> position(
      Loop loop, MonitorTold told, List<String> missing) {
    if (told.zeroVolts().isEmpty() || told.positive() == 0) {
      missing.add(told.zeroVolts().isEmpty() ? "zero voltage" : "direction");
      return Optional.empty();
    }
    OutputCurve right = loop.before().orElse(loop.now());
    OptionalDouble zero = right.gapAt(told.zeroVolts().getAsDouble());
    if (zero.isEmpty() || !loop.now().known().holds(zero.getAsDouble())) {
      missing.add("readings at the gap of the zero voltage");
      return Optional.empty();
    }
    return Optional.of(
        PositionEffect.of(
            loop.now(),
            zero.getAsDouble(),
            loop.ramp(),
            told.scaleFactor().orElseThrow(),
            right.sensitivity(zero.getAsDouble()),
            told));
  }

  /** Every set point with where it acts. */
  public List<ActsAt> setPoints() {
    return vibration
        .map(VibrationEffect::setPoints)
        .or(() -> position.map(PositionEffect::setPoints))
        .orElse(List.of());
  }
}
