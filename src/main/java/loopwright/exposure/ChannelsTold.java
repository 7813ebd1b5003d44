package loopwright.exposure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import loopwright.plant.ChannelInForce;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.protection.MonitorTold;
import loopwright.protection.SetPoint;
import org.jspecify.annotations.Nullable;

/** Channels of the plant as the arithmetic of set points takes them. */
public final class ChannelsTold {
  private ChannelsTold() {}

  public static MonitorTold of(ChannelInForce channel) {
    List<SetPoint> points = new ArrayList<>();
    add(points, "alert", channel.alert(), channel);
    add(points, "danger", channel.danger(), channel);
    return new MonitorTold(
        channel.name(),
        channel.scaleFactor() == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(channel.scaleFactor().millivoltsPerMicrometre()),
        points,
        Stream.of(channel.okVolts().low(), channel.okVolts().high())
            .filter(Objects::nonNull)
            .map(BigDecimal::doubleValue)
            .toList(),
        channel.zeroVolts() == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(channel.zeroVolts().doubleValue()),
        sign(channel.positive()));
  }

  private static void add(
      List<SetPoint> points, String name, Limits limits, ChannelInForce channel) {
    Stream.of(limits.low(), limits.high())
        .filter(Objects::nonNull)
        .forEach(level -> points.add(new SetPoint(name, level, channel.levelUnit())));
  }

  private static int sign(@Nullable Direction positive) {
    if (positive == null) {
      return 0;
    }
    return positive == Direction.TOWARD ? 1 : -1;
  }
}
