package loopwright.calibration;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Verdict;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.loop.Configuration;
import loopwright.loop.CurvesTaken;
import loopwright.loop.PartSet;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.loop.Standings;
import loopwright.problem.Refused;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Keeps calibrations against exactly the parts that were fitted when they were taken. */
public final class Calibrations {
  private static final int MOST_TAKEN = 500;
  private static final int JUDGED_AT_ONCE = 500;
  private static final int AT_ONE_MOMENT = 100;

  /** Found and left of one job lie mostly within this; own choice. */
  private static final Duration ONE_SHIFT = Duration.ofHours(12);

  /** And always within this; own choice. */
  private static final Duration ONE_JOB = Duration.ofDays(60);

  private final CalibrationStore store = new CalibrationStore();
  private final Configuration configuration;
  private final Standings standings;
  private final FoundOut foundOut;
  private final InstantSource clock;

  /**
   * @param foundOut told of each as-found out of tolerance
   */
  public Calibrations(
      Configuration configuration, Standings standings, FoundOut foundOut, InstantSource clock) {
    this.configuration = configuration;
    this.standings = standings;
    this.foundOut = foundOut;
    this.clock = clock;
  }

  /**
   * Keeps a calibration of what was fitted at the point at that moment.
   *
   * @return its number
   * @throws Refused if nobody can say what was fitted, the moment is in the future, a result
   *     without a curve gives no reason, or {@link CalibrationProblem#ALREADY_KEPT}
   */
  public String keep(Tx tx, NewCalibration fresh) {
    CalibrationStore.hold(tx, fresh.with());
    same(tx.sql(), fresh)
        .ifPresent(
            kept -> {
              throw new Refused(CalibrationProblem.ALREADY_KEPT, kept.number());
            });
    String number = store(tx, fresh, 1);
    standings.refresh(tx.sql(), touched(tx.sql(), fresh.with()));
    return number;
  }

  /** Loops that a calibration of these parts can concern. */
  private Set<Long> touched(DSLContext sql, TakenWith with) {
    Set<Long> points = with.parts().map(set -> holding(sql, set)).orElse(new TreeSet<>());
    if (with.atPoint() != null) {
      points.add(with.atPoint());
    }
    return points;
  }

  /** Where the probe of a set sits: nowhere else can the whole set be. */
  private Set<Long> holding(DSLContext sql, PartSet set) {
    Instant now = clock.instant();
    return configuration.ofComponent(sql, set.part(Slot.PROBE).number()).stream()
        .filter(placed -> placed.span().contains(now))
        .map(Placed::point)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** That very calibration, if it is kept already: a form sent twice gives one record. */
  public Optional<Calibrated> same(DSLContext sql, NewCalibration fresh) {
    return ofMoment(sql, fresh).stream()
        .filter(kept -> isSame(kept, fresh))
        .filter(kept -> store.readings(sql, kept.id()).equals(fresh.readings()))
        .filter(kept -> certificates(sql, kept).equals(fresh.certificates()))
        .filter(kept -> conditions(sql, kept).equals(fresh.conditions()))
        .findFirst();
  }

  /** Calibrations of the same point or parts, stage and moment, newest entered first. */
  List<Calibrated> ofMoment(DSLContext sql, NewCalibration fresh) {
    return store.latest(
        sql,
        CalibrationStore.ofMoment(fresh.with(), fresh.stage(), fresh.measuredAt()),
        AT_ONE_MOMENT);
  }

  /**
   * The calibration that makes the stages of one job run backwards: an as found later than this as
   * left, which has none before it; or the reverse. What is complete without this one, or was taken
   * in another shift and has its other half, is another job.
   */
  Optional<Calibrated> outOfOrder(DSLContext sql, NewCalibration fresh) {
    if (!(fresh.with() instanceof TakenWith.Fitted fitted)) {
      return Optional.empty();
    }
    List<Calibrated> kept =
        store.latest(sql, CalibrationStore.ofPoint(fitted.point()), AT_ONE_MOMENT);
    Instant at = fresh.measuredAt();
    if (fresh.stage() == Stage.AS_LEFT) {
      return within(kept, Stage.AS_FOUND, at.minus(ONE_SHIFT), at).isPresent()
          ? Optional.empty()
          : within(kept, Stage.AS_FOUND, at, at.plus(ONE_SHIFT)).or(() -> withoutLeft(kept, at));
    }
    return fresh.stage() == Stage.AS_FOUND
        ? within(kept, Stage.AS_LEFT, at.minus(ONE_JOB), at)
            .filter(left -> hasNoFound(kept, left.measuredAt()))
        : Optional.empty();
  }

  /** The next as found after that moment, if nobody said yet how it was left. */
  private static Optional<Calibrated> withoutLeft(List<Calibrated> kept, Instant at) {
    return within(kept, Stage.AS_FOUND, at, at.plus(ONE_JOB))
        .filter(
            found ->
                kept.stream()
                    .noneMatch(
                        c -> c.stage().isAsLeft() && c.measuredAt().isAfter(found.measuredAt())));
  }

  private static boolean hasNoFound(List<Calibrated> kept, Instant left) {
    return kept.stream()
        .noneMatch(
            c ->
                c.stage() != Stage.AS_LEFT
                    && !c.measuredAt().isAfter(left)
                    && c.measuredAt().isAfter(left.minus(ONE_JOB)));
  }

  private static Optional<Calibrated> within(
      List<Calibrated> kept, Stage stage, Instant from, Instant until) {
    return kept.stream()
        .filter(c -> c.stage() == stage)
        .filter(c -> !c.measuredAt().isBefore(from) && !c.measuredAt().isAfter(until))
        .findFirst();
  }

  private static boolean isSame(Calibrated kept, NewCalibration fresh) {
    return kept.performedBy().equals(fresh.performedBy())
        && kept.zero().equals(fresh.zero().word())
        && kept.targetAlloy().equals(fresh.targetAlloy())
        && Objects.equals(
            kept.profileVersion(), fresh.measured().map(m -> m.profileVersion()).orElse(null))
        && Objects.equals(kept.noCurveReason(), fresh.noCurve().map(n -> n.reason()).orElse(null));
  }

  /**
   * Keeps many in one change, for files; loops are judged anew once they are all there.
   *
   * @return their numbers, in order
   */
  public List<String> keepAll(Tx tx, List<NewCalibration> all) {
    List<String> numbers = new ArrayList<>();
    Set<Long> points = new TreeSet<>();
    for (int i = 0; i < all.size(); i++) {
      numbers.add(store(tx, all.get(i), i + 1));
      points.addAll(touched(tx.sql(), all.get(i).with()));
    }
    for (List<Long> some : Chunks.of(points, JUDGED_AT_ONCE)) {
      standings.refresh(tx.sql(), some);
    }
    return numbers;
  }

  private String store(Tx tx, NewCalibration fresh, int place) {
    if (fresh.measuredAt().isAfter(clock.instant())) {
      throw new Refused(CalibrationProblem.IN_FUTURE, fresh.measuredAt());
    }
    if (fresh.outcome() instanceof NewCalibration.NoCurve none && none.reason().isBlank()) {
      throw new Refused(CalibrationProblem.NO_CURVE_REASON);
    }
    PartSet set = measured(tx.sql(), fresh);
    long combination = store.combination(tx, set.fingerprint(), set.chain());
    CurveResult result =
        fresh.measured().map(m -> CurveAnalysis.of(m.curve(), m.profile())).orElse(null);
    String number = "C-" + tx.changeId() + (place == 1 ? "" : "-" + place);
    long id = store.insert(tx, fresh, combination, number, result);
    if (fresh.with() instanceof TakenWith.Fitted fitted
        && fresh.stage() != Stage.AS_LEFT
        && isOut(result)) {
      foundOut.outOfTolerance(tx, id, fitted.point());
    }
    return number;
  }

  /** The parts that were measured. */
  private PartSet measured(DSLContext sql, NewCalibration fresh) {
    TakenWith with = fresh.with();
    Long point = with.atPoint();
    if (point == null) {
      return with.parts().orElseThrow();
    }
    Optional<PartSet> fitted = fitted(sql, point, fresh.measuredAt());
    if (with.parts().isPresent() && with.parts().equals(fitted)) {
      throw new Refused(CalibrationProblem.NOT_STOOD_IN, configuration.tag(sql, point));
    }
    return with.parts()
        .or(() -> fitted)
        .orElseThrow(
            () -> new Refused(CalibrationProblem.NO_COMBINATION, configuration.tag(sql, point)));
  }

  private Optional<PartSet> fitted(DSLContext sql, long point, Instant at) {
    return PartSet.of(configuration.at(sql, point, at));
  }

  /** A loop of which nothing could be read is out of tolerance as well. */
  private static boolean isOut(@Nullable CurveResult result) {
    return result == null || result.verdict() != Verdict.CONFORMS;
  }

  /**
   * Calibrations taken at the point of what was fitted there, or of what is fitted there now,
   * newest first.
   */
  public List<Calibrated> ofLoop(
      DSLContext sql, long point, Optional<String> fingerprint, int most) {
    return ofLoop(sql, point, fingerprint, Viewpoint.LATEST, most);
  }

  /** The same of those measured by the viewpoint's moment and known then. */
  public List<Calibrated> ofLoop(
      DSLContext sql, long point, Optional<String> fingerprint, Viewpoint viewpoint, int most) {
    Condition which = CalibrationStore.ofPoint(point);
    if (fingerprint.isPresent()) {
      which = which.or(CalibrationStore.ofFingerprint(fingerprint.get()));
    }
    return store.latest(sql, which, viewpoint, most);
  }

  /** The same with those taken there while a part stood in; these are never the loop's own. */
  List<Calibrated> shownAtLoop(
      DSLContext sql, long point, Optional<String> fingerprint, Viewpoint viewpoint, int most) {
    Condition which = CalibrationStore.atPoint(point);
    if (fingerprint.isPresent()) {
      which = which.or(CalibrationStore.ofFingerprint(fingerprint.get()));
    }
    return store.latest(sql, which, viewpoint, most);
  }

  /** Calibrations of exactly these parts, wherever they were, newest first. */
  public List<Calibrated> ofSet(DSLContext sql, PartSet set, int most) {
    return store
        .known(sql, set.fingerprint())
        .map(combination -> store.latest(sql, CalibrationStore.ofCombination(combination), most))
        .orElse(List.of());
  }

  /**
   * The loop that a record speaks for: where it was taken, or, of a bench set and with a part
   * standing in, where exactly these parts are fitted now.
   */
  public Optional<Long> loopOf(DSLContext sql, Calibrated c) {
    if (c.setup() == Setup.FITTED) {
      return Optional.ofNullable(c.point());
    }
    Optional<PartSet> set = PartSet.read(c.fingerprint());
    return set.stream()
        .flatMap(parts -> holding(sql, parts).stream())
        .filter(point -> fitted(sql, point, clock.instant()).equals(set))
        .findFirst();
  }

  /** Calibrations taken at the point within a range of moments, newest first. */
  public List<CurvesTaken.Taken> takenAt(DSLContext sql, long point, Span span) {
    Condition which = CalibrationStore.ofPoint(point).and(CalibrationStore.measuredIn(span));
    return store.latest(sql, which, MOST_TAKEN).stream()
        .map(
            calibrated ->
                new CurvesTaken.Taken(
                    calibrated.number(),
                    calibrated.stage().word(),
                    calibrated.measuredAt(),
                    calibrated.fingerprint()))
        .toList();
  }

  /** Calibrations of combinations that held the component, newest first. */
  public List<Calibrated> ofComponent(DSLContext sql, long component, int most) {
    return store.latest(sql, CalibrationStore.withComponent(component), most);
  }

  /**
   * @throws Refused {@link CalibrationProblem#NOT_FOUND}
   */
  public Calibrated numbered(DSLContext sql, String number) {
    return find(sql, number).orElseThrow(() -> new Refused(CalibrationProblem.NOT_FOUND, number));
  }

  /** The one that people call so, if there is one. */
  public Optional<Calibrated> find(DSLContext sql, String number) {
    return store.numbered(sql, number);
  }

  /** The curve of a calibration that has one. */
  public Optional<Curve> curve(DSLContext sql, Calibrated calibrated) {
    return calibrated.hasCurve()
        ? Optional.of(new Curve(readings(sql, calibrated)))
        : Optional.empty();
  }

  /** What was read, as typed, also where no curve came of it. */
  List<CurveReading> readings(DSLContext sql, Calibrated calibrated) {
    return store.readings(sql, calibrated.id());
  }

  /** Of the reference standards it was made with, in rising order. */
  public List<Long> certificates(DSLContext sql, Calibrated calibrated) {
    return MadeWithStore.certificates(sql, calibrated.id());
  }

  /** Under what it was taken. */
  public Conditions conditions(DSLContext sql, Calibrated calibrated) {
    return ConditionStore.of(sql, calibrated.id());
  }

  /** SHA-256 of what a signature covers, hexadecimal. */
  public String contentHash(DSLContext sql, Calibrated calibrated) {
    return SignedContent.hash(
        calibrated,
        readings(sql, calibrated),
        certificates(sql, calibrated),
        conditions(sql, calibrated));
  }

  /** The record that stands in its place, if another does. */
  public Optional<Superseded> superseded(DSLContext sql, Calibrated calibrated) {
    return SupersededStore.of(sql, calibrated.id());
  }

  /** Ids of those among them in whose place another record stands. */
  public Set<Long> superseded(DSLContext sql, Collection<Calibrated> among) {
    return SupersededStore.among(sql, among.stream().map(Calibrated::id).toList());
  }

  /**
   * Lets another record of the same loop and stage stand in its place; both stay.
   *
   * @throws Refused if that can't be
   */
  void supersede(Tx tx, Calibrated old, Calibrated by, String reason) {
    holdStill(tx, old);
    if (old.id() == by.id()) {
      throw new Refused(CalibrationProblem.SUPERSEDED_BY_ITSELF);
    }
    superseded(tx.sql(), old)
        .ifPresent(
            already -> {
              throw new Refused(CalibrationProblem.SUPERSEDED_ALREADY, old.number(), already.by());
            });
    superseded(tx.sql(), by)
        .ifPresent(
            already -> {
              throw new Refused(CalibrationProblem.SUPERSEDED_RING, by.number(), already.by());
            });
    if (!isOfSameThing(old, by) || old.stage() != by.stage()) {
      throw new Refused(CalibrationProblem.SUPERSEDED_ELSEWHERE, by.number(), old.number());
    }
    SupersededStore.insert(tx, old.id(), by.id(), reason);
    standings.refresh(tx.sql(), touched(tx.sql(), old));
  }

  /** A misread curve of a loop may have been taken with other parts; that of a set may not. */
  private static boolean isOfSameThing(Calibrated old, Calibrated by) {
    return Objects.equals(old.point(), by.point())
        && old.setup() == by.setup()
        && (old.setup() == Setup.FITTED || old.fingerprint().equals(by.fingerprint()));
  }

  private Set<Long> touched(DSLContext sql, Calibrated c) {
    Set<Long> points =
        PartSet.read(c.fingerprint()).map(set -> holding(sql, set)).orElse(new TreeSet<>());
    if (c.point() != null) {
      points.add(c.point());
    }
    return points;
  }

  /** Until this transaction ends, nobody else signs or supersedes at that loop or of that set. */
  public void holdStill(Tx tx, Calibrated calibrated) {
    Long point = calibrated.point();
    if (point != null) {
      CalibrationStore.hold(tx, new TakenWith.Fitted(point));
    } else {
      PartSet.read(calibrated.fingerprint())
          .ifPresent(set -> CalibrationStore.hold(tx, new TakenWith.Bench(set)));
    }
  }

  /** Calibrations made with a reference standard, newest first. */
  List<Calibrated> madeWith(DSLContext sql, long standard, int most) {
    return store.latest(sql, MadeWithStore.madeWith(standard), most);
  }

  /** Calibrations made on exactly that certificate of a standard, newest first. */
  public List<Calibrated> madeOn(DSLContext sql, long certificate, int most) {
    return store.latest(sql, MadeWithStore.madeOn(certificate), most);
  }

  /** Those made with a standard that were taken in that time. */
  public List<Calibrated> madeWith(
      DSLContext sql, long standard, Instant from, Instant until, int most) {
    return store.latest(
        sql, MadeWithStore.madeWith(standard).and(CalibrationStore.between(from, until)), most);
  }

  CalibrationStore store() {
    return store;
  }
}
