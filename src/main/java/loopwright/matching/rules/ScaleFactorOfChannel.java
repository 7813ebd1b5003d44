package loopwright.matching.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.matching.AlloyGroup;
import loopwright.matching.Calibration;
import loopwright.matching.ChannelView;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
import loopwright.matching.Verdict;
import loopwright.units.ScaleFactor;

/**
 * Whether the scale factor told to a channel is the loop's nominal one, or with a reason the
 * measured one or the one for the shaft's alloy.
 */
final class ScaleFactorOfChannel {
  /** 200 mV/mil and 7.87 mV/µm, one nominal in two spellings, lie 0.05 % apart. */
  private static final double SPELLING = 0.001;

  /** How near a rounded entry has to come to what was measured; common practice, no source. */
  private static final double ROUNDING = 0.01;

  private ScaleFactorOfChannel() {}

  static void look(LoopView loop, ChannelView channel, Remarks remarks) {
    ScaleFactor told = channel.scaleFactor();
    Optional<ScaleFactor> nominal = ChannelLine.nominal(loop);
    if (told == null) {
      if (loop.place().measures() != Measures.MARK) {
        remarks.add(
            Verdict.UNKNOWN,
            "The scale factor of channel " + channel.name() + " is not recorded.",
            ChannelLine.READ_OUT);
      }
    } else if (nominal.isEmpty()) {
      remarks.add(
          Verdict.UNKNOWN,
          "The loop's nominal scale factor is not recorded.",
          "Enter it at the family.");
    } else if (same(told, nominal.get())) {
      ChannelSettings.matches(remarks);
    } else if (apart(told, nominal.get().millivoltsPerMicrometre()) <= SPELLING) {
      remarks.add(
          Verdict.ATTENTION,
          "Channel %s is told %s, the loop's nominal is %s: not the same number, though probably one nominal."
              .formatted(channel.name(), told, nominal.get()),
          "Tell the channel the nominal as it is declared.");
    } else {
      other(loop, channel, told, nominal.get(), remarks);
    }
  }

  private static void other(
      LoopView loop, ChannelView channel, ScaleFactor told, ScaleFactor nominal, Remarks remarks) {
    String message =
        "Channel %s is told %s, the loop's nominal is %s".formatted(channel.name(), told, nominal);
    List<Double> explained = explained(loop, nominal);
    boolean isExplained = explained.stream().anyMatch(value -> apart(told, value) <= ROUNDING);
    if (channel.scaleReason().isEmpty()) {
      remarks.add(
          Verdict.REFUSED,
          message + ", and no reason is on record.",
          isExplained
              ? "It is the measured value or the one for the shaft's alloy: enter that as the reason."
              : "Tell the channel the nominal, or enter why it is another one.");
    } else if (isExplained) {
      remarks.add(Verdict.MATCHES, message + ", with the reason: " + channel.scaleReason() + ".");
    } else {
      remarks.add(
          Verdict.ATTENTION,
          message
              + ", with the reason '"
              + channel.scaleReason()
              + "', but it is neither the measured value nor the one for the shaft's alloy.",
          "Check the reason, or calibrate the loop.");
    }
  }

  /** Values that a reason may stand for, mV/µm. */
  private static List<Double> explained(LoopView loop, ScaleFactor nominal) {
    List<Double> values = new ArrayList<>();
    Calibration latest = loop.calibration();
    if (latest != null && latest.changedSince().isEmpty() && latest.averageScaleFactor() != null) {
      values.add(latest.averageScaleFactor());
    }
    Optional<Double> made =
        loop.family()
            .flatMap(family -> loop.alloys().groupOf(family.targetAlloy()))
            .map(AlloyGroup::relativeSlope);
    Optional<Double> shaft =
        loop.alloys().groupOf(loop.place().shaftAlloy()).map(AlloyGroup::relativeSlope);
    if (made.isPresent() && shaft.isPresent()) {
      values.add(nominal.millivoltsPerMicrometre() * shaft.get() / made.get());
    }
    return values;
  }

  private static double apart(ScaleFactor told, double millivoltsPerMicrometre) {
    return Math.abs(told.millivoltsPerMicrometre() / millivoltsPerMicrometre - 1);
  }

  private static boolean same(ScaleFactor one, ScaleFactor other) {
    return one.unit() == other.unit()
        ? one.declared().compareTo(other.declared()) == 0
        : one.millivoltsPerMicrometre() == other.millivoltsPerMicrometre();
  }
}
