package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.Optional;
import loopwright.matching.ChannelView;
import loopwright.matching.Fact;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
import loopwright.matching.NominalLine;
import loopwright.matching.Range;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.problem.Text;

/**
 * The monitor channel fits the loop: the danger level swings inside the linear range, the OK limits
 * lie beyond that swing and within what the driver can put out, full scale and scale factor fit.
 * Set points belong to the owner; this only holds them against the loop.
 */
record ChannelSettings() implements Rule {
  /** What a driver on −24 V can put out where its family doesn't say, V. */
  static final Range USUAL_OUTPUT = Range.of("-23", "-0.5");

  @Override
  public String name() {
    return "monitor channel";
  }

  @Override
  public String basis() {
    return "A vibration of A peak to peak swings A/2 to either side of the set gap; the family's line"
        + " gives the volts there (own calculation). Where the family doesn't say, a driver on −24 V"
        + " puts out −0.5 to −23 V (common practice, no source).";
  }

  @Override
  public boolean blocksAssembly() {
    return false;
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.CHANNELS)) {
      return finding(Verdict.NOT_JUDGED, "This rule was given no monitor channels.");
    }
    if (ChannelLine.isCurrent(loop)) {
      return finding(Verdict.NOT_JUDGED, "A current is put out; limits in volts don't apply.");
    }
    if (loop.place().channels().isEmpty()) {
      return finding(
          Verdict.UNKNOWN,
          "No monitor channel is recorded for this point.",
          "Bring in rack, slot and channel with the file of points.");
    }
    Remarks remarks = new Remarks();
    loop.place().channels().forEach(channel -> look(loop, channel, remarks));
    return remarks.of(this, "Nothing about the channel applies to what is measured here.");
  }

  private static void look(LoopView loop, ChannelView channel, Remarks remarks) {
    ScaleFactorOfChannel.look(loop, channel, remarks);
    okWithinOutput(loop, channel, remarks);
    if (loop.place().measures() == Measures.RADIAL_VIBRATION) {
      vibration(loop, channel, remarks);
    }
    if (loop.place().measures() == Measures.AXIAL_POSITION) {
      positionFullScale(loop, channel, remarks);
    }
  }

  private static void okWithinOutput(LoopView loop, ChannelView channel, Remarks remarks) {
    Range ok = channel.okVolts();
    Range said = loop.family().map(FamilyView::outputVolts).orElse(Range.NOT_SAID);
    Range output = said.isComplete() ? said : USUAL_OUTPUT;
    if (!ok.isComplete()) {
      missing(channel, "OK limits", remarks);
    } else if (!output.holds(ok)) {
      remarks.add(
          Verdict.REFUSED,
          "OK limits %s of channel %s lie outside what the driver puts out, %s: a fault would pass as OK."
              .formatted(Amounts.voltsRange(ok), channel.name(), Amounts.voltsRange(output)),
          "Set the OK limits inside it.");
    } else {
      matches(remarks);
    }
  }

  private static void vibration(LoopView loop, ChannelView channel, Remarks remarks) {
    Optional<NominalLine> line = ChannelLine.of(loop);
    Double gap = loop.place().setGapMicrometres();
    if (line.isEmpty()) {
      ChannelLine.notRecorded(remarks);
    }
    if (gap == null) {
      remarks.add(Verdict.UNKNOWN, "The gap to set is not recorded.", "Enter it at the point.");
    }
    BigDecimal danger = channel.danger().high();
    BigDecimal full = channel.fullScale().high();
    if (danger == null) {
      missing(channel, "danger level", remarks);
    }
    if (full == null) {
      missing(channel, "full scale", remarks);
    }
    if (line.isPresent() && gap != null && danger != null) {
      danger(channel, line.get(), gap, danger, remarks);
    }
    if (line.isPresent() && gap != null && full != null) {
      double half = channel.micrometres(full) / 2;
      fullScale(channel, line.get(), gap - half, gap + half, channel.level(full), remarks);
    }
  }

  private static void danger(
      ChannelView channel, NominalLine line, double gap, BigDecimal danger, Remarks remarks) {
    double half = channel.micrometres(danger) / 2;
    double near = gap - half;
    double far = gap + half;
    String swing =
        "Danger at %s on channel %s swings from %s"
            .formatted(
                channel.level(danger),
                channel.name(),
                Amounts.gaps(near, far, channel.levelUnit()));
    if (!line.holds(near, far)) {
      remarks.add(
          Verdict.REFUSED,
          swing
              + ", outside the linear range "
              + Amounts.gaps(line.fromMicrometres(), line.toMicrometres(), channel.levelUnit())
              + ".",
          "Set another gap, or fit a family with a longer range; the set point is its owner's.");
      return;
    }
    Range ok = channel.okVolts();
    if (!ok.holdsInside(line.voltsAt(far)) || !ok.holdsInside(line.voltsAt(near))) {
      remarks.add(
          Verdict.REFUSED,
          "%s, that is %s to %s; OK limits %s are reached before danger."
              .formatted(
                  swing,
                  Amounts.volts(line.voltsAt(near)),
                  Amounts.volts(line.voltsAt(far)),
                  Amounts.voltsRange(ok)),
          "Set the OK limits beyond the swing of danger.");
    } else {
      matches(remarks);
    }
  }

  private static void positionFullScale(LoopView loop, ChannelView channel, Remarks remarks) {
    Optional<AxialScale> scale = AxialScale.of(channel);
    Optional<NominalLine> line = ChannelLine.of(loop);
    BigDecimal low = channel.fullScale().low();
    BigDecimal high = channel.fullScale().high();
    if (scale.isPresent() && line.isPresent() && low != null && high != null) {
      double one = line.get().gapAt(scale.get().voltsAt(channel.micrometres(low)));
      double other = line.get().gapAt(scale.get().voltsAt(channel.micrometres(high)));
      fullScale(
          channel,
          line.get(),
          Math.min(one, other),
          Math.max(one, other),
          channel.level(low) + " … " + channel.level(high),
          remarks);
    }
  }

  private static void fullScale(
      ChannelView channel,
      NominalLine line,
      double near,
      double far,
      String level,
      Remarks remarks) {
    if (line.holds(near, far)) {
      matches(remarks);
    } else {
      remarks.add(
          Verdict.ATTENTION,
          "Full scale %s on channel %s stands for gaps of %s, beyond the linear range %s: what is shown up there is not true."
              .formatted(
                  level,
                  channel.name(),
                  Amounts.gaps(near, far, channel.levelUnit()),
                  Amounts.gaps(line.fromMicrometres(), line.toMicrometres(), channel.levelUnit())),
          "Choose a smaller full scale, or know its limits.");
    }
  }

  private static void missing(ChannelView channel, String what, Remarks remarks) {
    remarks.add(
        Verdict.UNKNOWN,
        Text.capital(what) + " of channel " + channel.name() + ": not recorded.",
        ChannelLine.READ_OUT);
  }

  static void matches(Remarks remarks) {
    remarks.add(Verdict.MATCHES, "Levels, OK limits and scale factor of the channel fit the loop.");
  }
}
