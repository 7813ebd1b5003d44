package loopwright.fieldcheck;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import loopwright.dynamic.ResponseBand;
import loopwright.dynamic.StaticCurve;
import loopwright.matching.LoopView;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.PointChannel;
import loopwright.plant.PointKind;
import loopwright.register.ToleranceProfiles;

/**
 * What is on record of a loop when a check of it is judged.
 *
 * @param view its parts at that moment
 * @param before the last check of the same kind before this one
 * @param curve the newest as-left of exactly these parts by then
 * @param approvedGap µm
 * @param allowed response by the profile that judges this loop
 */
record Background(
    PointKind kind,
    LoopView view,
    List<PointChannel> channels,
    Optional<FieldCheck> before,
    Optional<AsLeft> curve,
    OptionalDouble approvedGap,
    Optional<AllowedResponse> allowed) {

  /**
   * An as-left curve.
   *
   * @param number by which people call it
   * @param uncertaintyAt relative standard uncertainty of its slope at a gap in µm, from its own
   *     budget; empty where none is stated
   */
  record AsLeft(String number, StaticCurve curve, DoubleFunction<OptionalDouble> uncertaintyAt) {
    AsLeft(String number, StaticCurve curve) {
      this(number, curve, gap -> OptionalDouble.empty());
    }
  }

  /**
   * The band of a profile's version.
   *
   * @param version its number in the register
   * @param name of profile and version
   */
  record AllowedResponse(long version, String name, ResponseBand band) {
    static Optional<AllowedResponse> of(ToleranceProfiles.Stored stored) {
      return stored
          .terms()
          .response()
          .map(
              band ->
                  new AllowedResponse(
                      stored.version(),
                      stored.profile().code() + ", version " + stored.profile().version(),
                      band));
    }
  }

  Background {
    channels = List.copyOf(channels);
  }

  Background(
      PointKind kind, LoopView view, List<PointChannel> channels, Optional<FieldCheck> before) {
    this(kind, view, channels, before, Optional.empty(), OptionalDouble.empty(), Optional.empty());
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
