package loopwright.fieldcheck;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.calibration.RegisteredProfiles;
import loopwright.db.Tx;
import loopwright.dynamic.ResponseBand;
import loopwright.dynamic.StaticCurve;
import loopwright.loop.Combinations;
import loopwright.loop.Judging;
import loopwright.plant.Channels;
import loopwright.plant.Point;
import loopwright.problem.Refused;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import org.jooq.DSLContext;

/** Keeps checks with what they say, judged by what is on record of the loop at that moment. */
public final class FieldChecks {
  private static final int NEWEST = 20;

  private final CheckStore store = new CheckStore();
  private final Judging judging;
  private final Channels channels;
  private final Calibrations calibrations;
  private final Evidence.Book evidence;
  private final RegisteredProfiles profiles;
  private final InstantSource clock;

  /**
   * @param evidence what a curve is worth, to hold a dynamic check against
   * @param profiles whose response bands judge
   */
  public FieldChecks(
      Judging judging,
      Channels channels,
      Calibrations calibrations,
      Evidence.Book evidence,
      RegisteredProfiles profiles,
      InstantSource clock) {
    this.judging = judging;
    this.channels = channels;
    this.calibrations = calibrations;
    this.evidence = evidence;
    this.profiles = profiles;
    this.clock = clock;
  }

  /**
   * Keeps one.
   *
   * @return its number among checks
   * @throws Refused if the moment is in the future, or {@link FieldCheckProblem#ALREADY_KEPT}
   */
  long keep(Tx tx, Point point, NewCheck fresh) {
    if (fresh.takenAt().isAfter(clock.instant())) {
      throw new Refused(FieldCheckProblem.IN_FUTURE, fresh.takenAt());
    }
    store.hold(tx, fresh.point());
    if (same(tx.sql(), fresh).isPresent()) {
      throw new Refused(FieldCheckProblem.ALREADY_KEPT);
    }
    Judging.Judged judged = judged(tx.sql(), point, fresh);
    Background background = background(tx.sql(), point, judged, fresh);
    return store.add(
        tx,
        fresh,
        Combinations.fingerprint(judged.chain()),
        said(fresh, background),
        background.allowed().map(Background.AllowedResponse::version));
  }

  /** That very check, if it is kept already: a form sent twice gives one record. */
  Optional<FieldCheck> same(DSLContext sql, NewCheck fresh) {
    return store.ofMoment(sql, fresh).stream()
        .filter(kept -> kept.entries().equals(fresh.entries()))
        .findFirst();
  }

  private Judging.Judged judged(DSLContext sql, Point point, NewCheck fresh) {
    Judging.Subject subject = new Judging.Subject(point.id().number(), point.tag());
    return judging.judge(sql, List.of(subject), fresh.takenAt()).get(0);
  }

  private Background background(
      DSLContext sql, Point point, Judging.Judged judged, NewCheck fresh) {
    return new Background(
        point.details().kind(),
        judged.view(),
        channels.ofPoint(sql, point.id()),
        store.before(sql, fresh.point(), fresh.kind(), fresh.takenAt()),
        Combinations.fingerprint(judged.chain())
            .flatMap(parts -> asLeft(sql, fresh.point(), parts, fresh.takenAt())),
        Stream.ofNullable(point.details().approvedGap())
            .mapToDouble(Reported::canonical)
            .findFirst(),
        fresh.kind() == CheckKind.RESPONSE
            ? profiles
                .suiting(sql, fresh.point(), judged.chain())
                .flatMap(Background.AllowedResponse::of)
            : Optional.empty());
  }

  /** The newest as-left curve of exactly these parts by then. */
  private Optional<Background.AsLeft> asLeft(
      DSLContext sql, long point, String fingerprint, Instant at) {
    return calibrations
        .ofLoop(sql, point, Optional.of(fingerprint), Viewpoint.of(at), NEWEST)
        .stream()
        .filter(kept -> kept.stage().isAsLeft() && kept.hasCurve())
        .filter(kept -> kept.fingerprint().equals(fingerprint))
        .filter(kept -> calibrations.superseded(sql, kept).isEmpty())
        .findFirst()
        .flatMap(
            kept ->
                calibrations
                    .curve(sql, kept)
                    .flatMap(StaticCurve::of)
                    .map(curve -> asLeft(sql, kept, curve)));
  }

  private Background.AsLeft asLeft(DSLContext sql, Calibrated kept, StaticCurve curve) {
    Evidence worth = evidence.of(sql, kept);
    return new Background.AsLeft(kept.number(), curve, worth::slopeUncertaintyAt);
  }

  private Optional<ResponseBand> bandOf(DSLContext sql, FieldCheck check) {
    return check
        .profileVersion()
        .flatMap(version -> profiles.version(sql, version))
        .flatMap(stored -> stored.terms().response());
  }

  /** The check as a drawing, where its kind has one. */
  Optional<String> drawing(DSLContext sql, Point point, FieldCheck check) {
    return switch (check.kind()) {
      case RESPONSE -> ResponseDrawing.svg(check.entries(), bandOf(sql, check));
      case DYNAMIC ->
          check
              .fingerprint()
              .flatMap(parts -> asLeft(sql, check.point(), parts, check.takenAt()))
              .flatMap(
                  curve ->
                      DynamicDrawing.svg(check.entries(), curve, point.details().approvedGap()));
      default -> Optional.empty();
    };
  }

  private static List<Said> said(NewCheck fresh, Background background) {
    return switch (fresh.kind()) {
      case ELECTRICAL -> ElectricalJudge.judge(fresh.entries(), background);
      case CHANNEL -> ChannelJudge.judge(fresh.entries(), background);
      case DYNAMIC -> DynamicJudge.judge(fresh.entries(), background);
      case RESPONSE -> ResponseJudge.judge(fresh.entries(), background.allowed());
      case SLOW_ROLL -> SlowRollJudge.judge(fresh.entries(), background);
    };
  }

  /** Its number among checks, if there is one that people call so. */
  public Optional<Long> numbered(DSLContext sql, String number) {
    return number.matches("J-\\d{1,15}")
        ? one(sql, Long.parseLong(number.substring(2))).map(FieldCheck::id)
        : Optional.empty();
  }

  Optional<FieldCheck> one(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  /** Of one point, newest first, as seen from that viewpoint. */
  List<FieldCheck> ofPoint(DSLContext sql, long point, Viewpoint viewpoint, int most) {
    return store.ofPoint(sql, point, viewpoint, most);
  }
}
