package loopwright.matching.rules;

import java.util.Optional;
import loopwright.matching.FamilyView;
import loopwright.matching.LoopView;
import loopwright.matching.NominalLine;
import loopwright.matching.Output;
import loopwright.matching.PartView;
import loopwright.matching.Verdict;
import loopwright.units.ScaleFactor;

/** What the driver of a loop gives out, as far as the rules about channels need it. */
final class ChannelLine {
  /** What to do where a channel's setting is missing. */
  static final String READ_OUT = "Read the setting out of the monitor and bring it in.";

  private ChannelLine() {}

  /** The line that the driver's family declares, at the driver's own slope where it has one. */
  static Optional<NominalLine> of(LoopView loop) {
    Optional<NominalLine> line = loop.family().map(FamilyView::line);
    Optional<ScaleFactor> own = loop.driver().part().map(PartView::scaleFactor);
    return line.map(
        declared ->
            own.map(
                    scale ->
                        new NominalLine(
                            declared.fromMicrometres(),
                            declared.toMicrometres(),
                            declared.startVolts(),
                            scale.millivoltsPerMicrometre()))
                .orElse(declared));
  }

  /** The loop's nominal scale factor: the driver's own, else its family's. */
  static Optional<ScaleFactor> nominal(LoopView loop) {
    return loop.driver()
        .part()
        .map(PartView::scaleFactor)
        .or(() -> loop.family().map(FamilyView::scaleFactor));
  }

  /** Whether the output is a current, of which limits in volts say nothing. */
  static boolean isCurrent(LoopView loop) {
    return loop.family().filter(family -> family.output() == Output.CURRENT).isPresent();
  }

  /** Says that the line isn't known, and where to enter it. */
  static void notRecorded(Remarks remarks) {
    remarks.add(
        Verdict.UNKNOWN,
        "Linear range and start voltage of the family are not recorded.",
        "Enter them at the family.");
  }
}
