package loopwright.symptom;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.Calibrated;
import loopwright.curve.Curve;
import loopwright.matching.FamilyView;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.plant.Point;
import loopwright.time.SiteMoment;
import loopwright.units.Length;
import loopwright.web.PathSegment;

/**
 * What is on record of the loop that the numbers come from.
 *
 * @param view its parts
 * @param last the newest as-left curve of the point or of these parts
 */
record LoopOnRecord(Point point, LoopView view, Optional<LastCurve> last) {

  /**
   * An as-left curve.
   *
   * @param asFitted was it taken with the parts that are fitted now?
   */
  record LastCurve(Calibrated calibrated, Curve curve, ZoneId zone, boolean asFitted) {
    String name() {
      return "curve " + calibrated.number();
    }

    String inWords() {
      String day = SiteMoment.shown(calibrated.measuredAt(), zone).split(" ", -1)[0];
      return "as-left curve "
          + calibrated.number()
          + " of "
          + day
          + (asFitted ? "" : ", taken with other parts than are fitted now")
          + (calibrated.outcome().equals("conforms") ? "" : ", which does not conform");
    }
  }

  String tag() {
    return point.tag();
  }

  String href() {
    return "/loops/" + PathSegment.of(tag());
  }

  /** What the driver on record is tuned for. */
  Optional<Length> systemLength() {
    return length(view.driver());
  }

  Optional<FamilyView> family() {
    return view.family();
  }

  /** The probe, where its lead's length is known. */
  Optional<PartView> probe() {
    return view.probe().part().filter(part -> part.length() != null);
  }

  /** The one cable, where it is one and its length is known. */
  Optional<PartView> cable() {
    return view.path().size() == 1
        ? view.path().get(0).part().filter(part -> part.length() != null)
        : Optional.empty();
  }

  /** Total nominal length on record; empty where a length isn't known. */
  Optional<Length> fitted() {
    Stream<Slot> line = Stream.concat(Stream.of(view.probe()), view.path().stream());
    List<Optional<Length>> lengths =
        line.filter(slot -> !slot.equals(Slot.NONE_FITTED)).map(LoopOnRecord::length).toList();
    return lengths.stream().allMatch(Optional::isPresent)
        ? lengths.stream().flatMap(Optional::stream).reduce(Length::plus)
        : Optional.empty();
  }

  private static Optional<Length> length(Slot slot) {
    return slot.part().map(PartView::length).map(KnownLength::length);
  }
}
