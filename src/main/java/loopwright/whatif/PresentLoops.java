package loopwright.whatif;

import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.cause.Baseline;
import loopwright.cause.GivenBaseline;
import loopwright.cause.GivenCurve;
import loopwright.cause.Typed;
import loopwright.curve.Curve;
import loopwright.matching.LoopView;
import loopwright.matching.NominalLine;
import loopwright.plant.Point;
import loopwright.problem.Refused;
import loopwright.protection.GapSpan;
import loopwright.units.Reported;
import org.jooq.DSLContext;

/** Finds the curve from which an outlook starts. */
final class PresentLoops {
  private static final int LOOKED_AT = 60;

  private final Calibrations calibrations;

  PresentLoops(Calibrations calibrations) {
    this.calibrations = calibrations;
  }

  Optional<Present> of(DSLContext sql, Point point, Optional<String> fingerprint, LoopView fitted) {
    return calibrations.ofLoop(sql, point.id().number(), fingerprint, LOOKED_AT).stream()
        .filter(c -> c.stage().isAsLeft() && c.outcome().equals("conforms"))
        .flatMap(c -> calibrations.curve(sql, c).flatMap(curve -> kept(point, c, curve)).stream())
        .findFirst()
        .or(() -> fitted.family().flatMap(family -> line(point, family.code(), family.line())));
  }

  private static Optional<Present> kept(Point point, Calibrated calibrated, Curve curve) {
    GivenCurve given = GivenCurve.of("curve " + calibrated.number(), curve);
    double[] gaps = given.gaps();
    GapSpan known = new GapSpan(gaps[0], gaps[gaps.length - 1]);
    Reported approved = point.details().approvedGap();
    boolean reaches =
        approved != null
            && approved.canonical() >= known.nearMicrometres()
            && approved.canonical() <= known.farMicrometres();
    Optional<Typed> gap =
        reaches && approved != null
            ? Optional.of(new Typed("the approved gap", approved.typed(), approved.unit()))
            : Optional.empty();
    try {
      Baseline baseline = GivenBaseline.curve(given, gap, Optional.empty());
      return Optional.of(
          new Present(
              baseline,
              "the last good curve, " + calibrated.number(),
              known,
              Optional.of(new Present.Record(calibrated, curve))));
    } catch (Refused notFalling) {
      return Optional.empty();
    }
  }

  private static Optional<Present> line(
      Point point, String family, @org.jspecify.annotations.Nullable NominalLine line) {
    if (line == null) {
      return Optional.empty();
    }
    Reported approved = point.details().approvedGap();
    double gap =
        approved == null
            ? (line.fromMicrometres() + line.toMicrometres()) / 2
            : approved.canonical();
    return Optional.of(
        new Present(
            Baseline.line(gap, line.voltsAt(gap), line.millivoltsPerMicrometre()),
            "the line that family " + family + " declares; no good curve is on record",
            new GapSpan(line.fromMicrometres(), line.toMicrometres()),
            Optional.empty()));
  }
}
