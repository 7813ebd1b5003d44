package loopwright.fieldcheck;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import loopwright.dynamic.StaticCurve;
import loopwright.matching.LoopView;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.PointChannel;
import loopwright.plant.PointKind;

/**
 * What is on record of a loop when a check of it is judged.
 *
 * @param view its parts at that moment
 * @param before the last check of the same kind before this one
 * @param curve the newest as-left of exactly these parts by then
 * @param approvedGap µm
 */
record Background(
    PointKind kind,
    LoopView view,
    List<PointChannel> channels,
    Optional<FieldCheck> before,
    Optional<AsLeft> curve,
    OptionalDouble approvedGap) {

  /**
   * An as-left curve.
   *
   * @param number by which people call it
   */
  record AsLeft(String number, StaticCurve curve) {}

  Background {
    channels = List.copyOf(channels);
  }

  Background(
      PointKind kind, LoopView view, List<PointChannel> channels, Optional<FieldCheck> before) {
    this(kind, view, channels, before, Optional.empty(), OptionalDouble.empty());
  }

  /** What the channel that measures here was told, else what somebody read out of it. */
  Optional<ChannelSetting> setting() {
    return channels.stream()
        .filter(channel -> channel.role() == ChannelRole.MEASURES)
        .flatMap(
            channel ->
                Stream.of(
                        Optional.ofNullable(channel.approved()),
                        Optional.ofNullable(channel.found()))
                    .flatMap(Optional::stream)
                    .limit(1))
        .findFirst();
  }

  boolean isVibration() {
    return kind == PointKind.RADIAL;
  }
}
