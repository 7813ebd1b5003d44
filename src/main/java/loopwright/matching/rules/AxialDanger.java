package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.matching.ChannelView;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
import loopwright.matching.NominalLine;
import loopwright.matching.Range;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;

/**
 * Each danger position of an axial channel, through zero voltage and direction, falls inside the
 * linear range and inside the OK limits: only then can the trip act.
 */
record AxialDanger() implements Rule {

  @Override
  public String name() {
    return "axial danger positions";
  }

  @Override
  public String basis() {
    return "A position x is shown at V = V_zero ± x·S, plus where movement toward the probe is"
        + " positive; closer is less negative. Set points count from zero and hold the float"
        + " already (own calculation).";
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
    if (loop.place().measures() != Measures.AXIAL_POSITION) {
      return finding(Verdict.NOT_JUDGED, "The point measures no axial position.");
    }
    if (ChannelLine.isCurrent(loop)) {
      return finding(Verdict.NOT_JUDGED, "A current is put out; limits in volts don't apply.");
    }
    Remarks remarks = new Remarks();
    loop.place().channels().forEach(channel -> look(loop, channel, remarks));
    return remarks.of(this, "No monitor channel is recorded for this point.");
  }

  private static void look(LoopView loop, ChannelView channel, Remarks remarks) {
    Optional<NominalLine> line = ChannelLine.of(loop);
    Optional<AxialScale> scale = AxialScale.of(channel);
    if (line.isEmpty()) {
      ChannelLine.notRecorded(remarks);
      return;
    }
    if (scale.isEmpty()) {
      remarks.add(
          Verdict.UNKNOWN,
          "Zero voltage, direction or scale factor of channel "
              + channel.name()
              + " is not recorded.",
          ChannelLine.READ_OUT);
      return;
    }
    if (!channel.danger().isComplete() || !channel.okVolts().isComplete()) {
      remarks.add(
          Verdict.ATTENTION,
          "Channel %s has not both %s on record."
              .formatted(
                  channel.name(), channel.danger().isComplete() ? "OK limits" : "danger positions"),
          ChannelLine.READ_OUT);
    }
    for (BigDecimal danger : sides(channel.danger())) {
      position(line.get(), scale.get(), channel, danger, remarks);
    }
  }

  private static List<BigDecimal> sides(Range danger) {
    List<BigDecimal> sides = new ArrayList<>();
    if (danger.low() != null) {
      sides.add(danger.low());
    }
    if (danger.high() != null) {
      sides.add(danger.high());
    }
    return sides;
  }

  private static void position(
      NominalLine line, AxialScale scale, ChannelView channel, BigDecimal danger, Remarks remarks) {
    double volts = scale.voltsAt(channel.micrometres(danger));
    double gap = line.gapAt(volts);
    String where =
        "Danger at %s on channel %s is shown at %s"
            .formatted(channel.level(danger), channel.name(), Amounts.volts(volts));
    if (!line.holds(gap, gap)) {
      remarks.add(
          Verdict.REFUSED,
          where
              + ", outside the linear range "
              + Amounts.volts(line.startVolts())
              + " to "
              + Amounts.volts(line.endVolts())
              + ".",
          "Check zero voltage and direction first; the set point is its owner's.");
    } else if (!channel.okVolts().holdsInside(volts)) {
      remarks.add(
          Verdict.REFUSED,
          where
              + ", beyond an OK limit of "
              + Amounts.voltsRange(channel.okVolts())
              + ": the monitor would call the loop not OK first.",
          "Set the OK limits beyond both danger positions.");
    } else {
      remarks.add(
          Verdict.MATCHES, "Both danger positions lie inside the linear range and inside OK.");
    }
  }
}
