package loopwright.exposure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.calibration.Stage;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointDetails;
import loopwright.plant.PointId;
import loopwright.plant.PointKind;
import loopwright.protection.ChannelEffect;
import loopwright.protection.ChannelEffect.Reading;
import loopwright.protection.EffectWords;
import loopwright.protection.OutputCurve;
import loopwright.protection.Ramp;
import loopwright.time.Viewpoint;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What kept curves do to the set points of the channels that their point feeds. */
public final class Effects {
  private static final int LOOKED_AT = 60;

  private final Plant plant;
  private final Channels channels;
  private final Calibrations calibrations;
  private final RegisteredProfiles profiles;

  public Effects(
      Plant plant, Channels channels, Calibrations calibrations, RegisteredProfiles profiles) {
    this.plant = plant;
    this.channels = channels;
    this.calibrations = calibrations;
    this.profiles = profiles;
  }

  /**
   * Worked out, for a page.
   *
   * @param said where the probe stands and what was compared, in sentences
   * @param cautions what must be known before anybody acts on it
   */
  public record Shown(List<String> said, List<EffectShown> channels, List<String> cautions) {}

  /** The newest record before that one, at the same point, that was left good. */
  Optional<Calibrated> lastGood(DSLContext sql, Calibrated before) {
    Long point = before.point();
    if (point == null) {
      return Optional.empty();
    }
    Viewpoint until = Viewpoint.of(before.measuredAt());
    return calibrations.ofLoop(sql, point, Optional.empty(), until, LOOKED_AT).stream()
        .filter(c -> c.id() != before.id() && isLeftGood(c))
        .findFirst();
  }

  /** Whether the monitor was told something else at the later record than at the earlier one. */
  boolean settingsChanged(DSLContext sql, Calibrated earlier, Calibrated later) {
    Long point = later.point();
    return point != null
        && !channels
            .measuring(sql, new PointId(point), Viewpoint.of(earlier.measuredAt()))
            .equals(channels.measuring(sql, new PointId(point), Viewpoint.of(later.measuredAt())));
  }

  static boolean isLeftGood(Calibrated c) {
    return c.stage() != Stage.AS_FOUND && c.outcome().equals("conforms");
  }

  /** Of a record: empty where it has no point or nothing of the channels is known. */
  Optional<Shown> ofRecord(DSLContext sql, Calibrated record, UnitsShown units) {
    Long number = record.point();
    if (number == null) {
      return Optional.empty();
    }
    return plant
        .point(sql, new PointId(number))
        .flatMap(
            point ->
                shown(
                    sql,
                    point,
                    record,
                    lastGood(sql, record).orElse(null),
                    Viewpoint.of(record.measuredAt()),
                    units));
  }

  /** Of the newest curve of exactly what is fitted; empty where there is none. */
  Optional<Shown> ofLoop(
      DSLContext sql, long number, String fingerprint, Viewpoint viewpoint, UnitsShown units) {
    List<Calibrated> all =
        calibrations.ofLoop(sql, number, Optional.of(fingerprint), viewpoint, LOOKED_AT);
    Optional<Calibrated> now =
        all.stream().filter(c -> c.hasCurve() && c.fingerprint().equals(fingerprint)).findFirst();
    Optional<Calibrated> good =
        all.stream()
            .filter(c -> isLeftGood(c) && now.filter(n -> n.id() == c.id()).isEmpty())
            .findFirst();
    return now.flatMap(
        record ->
            plant
                .point(sql, new PointId(number))
                .flatMap(point -> shown(sql, point, record, good.orElse(null), viewpoint, units)));
  }

  private Optional<Shown> shown(
      DSLContext sql,
      Point point,
      Calibrated record,
      @Nullable Calibrated good,
      Viewpoint settings,
      UnitsShown units) {
    var told = channels.measuring(sql, point.id(), settings);
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Optional<CurveOnRecord> now = curve(sql, record);
    Optional<CurveOnRecord> before = Optional.ofNullable(good).flatMap(c -> curve(sql, c));
    EffectWords words = new EffectWords(units.metric());
    if (now.isEmpty()) {
      return Optional.of(
          new Shown(
              List.of("There was no curve: no level can be told. Reckon that no set point acted."),
              List.of(),
              List.of(EffectWords.OWNER)));
    }
    double gap = gap(point.details(), now.get());
    Optional<OutputCurve> output = now.get().output(gap);
    List<String> said = new ArrayList<>();
    said.add(
        "Worked out from curve %s at a gap of %s%s."
            .formatted(
                record.number(), words.length(gap), isApproved(point, gap) ? ", as approved" : ""));
    if (output.isEmpty()) {
      said.add("There the curve doesn't fall with the gap: reckon that no set point acted.");
      return Optional.of(new Shown(said, List.of(), List.of(EffectWords.OWNER)));
    }
    before.ifPresent(b -> said.add("Before: curve " + b.calibrated().number() + "."));
    ChannelEffect.Loop loop =
        new ChannelEffect.Loop(
            reading(point.details()),
            output.get(),
            before.flatMap(b -> b.output(gap)),
            gap,
            ramp(point.details()));
    return Optional.of(
        new Shown(
            said,
            told.stream()
                .map(
                    c -> EffectShown.of(ChannelEffect.of(loop, ChannelsTold.of(c)), units.metric()))
                .toList(),
            cautions(point.details(), now.get(), before)));
  }

  /** A curve that is kept, with what its profile made of it. */
  private Optional<CurveOnRecord> curve(DSLContext sql, Calibrated record) {
    return calibrations
        .curve(sql, record)
        .map(curve -> new CurveOnRecord(record, curve, profiles.judged(sql, record, curve)));
  }

  private static double gap(PointDetails details, CurveOnRecord curve) {
    return details.approvedGap() != null && curve.reaches(details.approvedGap().canonical())
        ? details.approvedGap().canonical()
        : curve.middle();
  }

  private static boolean isApproved(Point point, double gap) {
    return point.details().approvedGap() != null
        && point.details().approvedGap().canonical() == gap;
  }

  public static Reading reading(PointDetails details) {
    return switch (details.kind()) {
      case RADIAL -> Reading.VIBRATION;
      case AXIAL, DIFFERENTIAL_EXPANSION, CASING_EXPANSION -> Reading.POSITION;
      case PHASE, SPEED -> Reading.NO_LEVEL;
    };
  }

  /** The ramp that an expansion is measured on; a collar where none is recorded. */
  public static Ramp ramp(PointDetails details) {
    BigDecimal degrees = details.facing().rampDegrees();
    return isExpansion(details) && degrees != null ? new Ramp(degrees.doubleValue()) : Ramp.NONE;
  }

  private static boolean isExpansion(PointDetails details) {
    return details.kind() == PointKind.DIFFERENTIAL_EXPANSION
        || details.kind() == PointKind.CASING_EXPANSION;
  }

  /** What can't be told of an expansion from its one loop. */
  private static List<String> ofExpansion(PointDetails details) {
    List<String> cautions = new ArrayList<>();
    if (details.facing().rampDegrees() == null) {
      cautions.add(
          "No ramp angle is on record: worked out as in front of a collar. On a ramp levels would be"
              + " worth less gap, by the sine of its angle.");
    } else {
      cautions.add(
          "On a ramp the shaft's lift changes the gap too, by the cosine; that isn't worked out.");
    }
    if (!details.pairTag().isEmpty()) {
      cautions.add(
          "Where the monitor adds %s to it or takes over from it, this is the part of one loop alone."
              .formatted(details.pairTag()));
    }
    return cautions;
  }

  private static List<String> cautions(
      PointDetails details, CurveOnRecord now, Optional<CurveOnRecord> before) {
    List<String> cautions = new ArrayList<>();
    boolean position = reading(details) == Reading.POSITION;
    if (position && before.isEmpty()) {
      cautions.add(
          "No good record stands before it: the gap of the zero voltage is taken from this curve, so"
              + " an offset is not seen.");
    }
    if (position
        && before.isPresent()
        && (now.fromElectricalZero() || before.get().fromElectricalZero())) {
      cautions.add(
          "Gaps of these curves count from an electrical zero: an offset between them is not seen.");
    }
    if (before.isPresent()
        && !before.get().calibrated().fingerprint().equals(now.calibrated().fingerprint())) {
      cautions.add("The earlier curve was taken with other parts.");
    }
    if (isExpansion(details)) {
      cautions.addAll(ofExpansion(details));
    }
    cautions.add(EffectWords.OWNER);
    return cautions;
  }
}
