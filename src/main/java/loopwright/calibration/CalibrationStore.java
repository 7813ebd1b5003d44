package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMBINATION;
import static loopwright.db.gen.Tables.COMBINATION_PART;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;
import loopwright.curve.GapRange;
import loopwright.curve.Run;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationReadingRecord;
import loopwright.db.gen.tables.records.CalibrationRecord;
import loopwright.db.gen.tables.records.CombinationPartRecord;
import loopwright.db.gen.tables.records.CombinationRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.loop.AsLeftFacts;
import loopwright.loop.Content;
import loopwright.loop.PartSet;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record3;
import org.jooq.Result;
import org.jooq.SelectOnConditionStep;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Calibrations and the combinations they belong to. Insert-only. */
final class CalibrationStore {
  static final String NO_CURVE = "no curve";

  /** The combination with exactly these parts; made when it is new. */
  long combination(Tx tx, String fingerprint, List<Placed> chain) {
    Optional<Long> known = known(tx.sql(), fingerprint);
    return known.orElseGet(() -> newCombination(tx, fingerprint, chain));
  }

  /** The number of that combination, if anything was ever measured of it. */
  Optional<Long> known(DSLContext sql, String fingerprint) {
    return sql.select(COMBINATION.ID)
        .from(COMBINATION)
        .where(COMBINATION.FINGERPRINT.eq(fingerprint))
        .fetchOptional(COMBINATION.ID);
  }

  static Condition ofCombination(long combination) {
    return CALIBRATION.COMBINATION_ID.eq(combination);
  }

  private static long newCombination(Tx tx, String fingerprint, List<Placed> chain) {
    CombinationRecord combination = tx.row(COMBINATION);
    combination.setFingerprint(fingerprint);
    tx.insert(combination);
    for (Placed placed : chain) {
      if (placed.content() instanceof Content.Part part) {
        CombinationPartRecord row = tx.row(COMBINATION_PART);
        row.setCombinationId(combination.getId());
        row.setSlot(placed.slot().word());
        row.setComponentId(part.number());
        row.setComponentChannel((short) part.channel());
        tx.insert(row);
      }
    }
    return combination.getId();
  }

  /**
   * Stores it; {@code result} belongs to the measured curve.
   *
   * @return its row's number
   */
  long insert(
      Tx tx, NewCalibration fresh, long combination, String number, @Nullable CurveResult result) {
    CalibrationRecord row = tx.row(CALIBRATION);
    row.setNumber(number);
    row.setCombinationId(combination);
    row.setSetup(fresh.with().setup().word());
    row.setPointId(fresh.with().atPoint());
    row.setStage(fresh.stage().word());
    row.setMeasuredAt(Tx.moment(fresh.measuredAt()));
    row.setPerformedBy(fresh.performedBy());
    row.setZeroUsed(fresh.zero().word());
    row.setTargetAlloy(fresh.targetAlloy().isEmpty() ? null : fresh.targetAlloy());
    row.setOrigin(fresh.origin());
    if (fresh.outcome() instanceof NewCalibration.NoCurve none) {
      row.setOutcome(NO_CURVE);
      row.setNoCurveReason(none.reason());
    } else {
      row.setOutcome("curve");
    }
    asTyped(row, fresh.readings());
    ConditionStore.fill(row, fresh.conditions());
    if (result != null) {
      fresh.measured().ifPresent(measured -> fill(row, measured, result));
    }
    tx.insert(row);
    tx.insertGroup(row.getId(), readings(tx, row.getId(), fresh.readings()));
    MadeWithStore.insert(tx, row.getId(), fresh.certificates());
    return row.getId();
  }

  private static void asTyped(CalibrationRecord row, List<CurveReading> readings) {
    if (!readings.isEmpty()) {
      row.setGapUnit(readings.get(0).gap().unit().symbol());
      row.setVoltsUnit(readings.get(0).output().unit().symbol());
      boolean magnitude = readings.stream().anyMatch(r -> r.output().amount().signum() > 0);
      row.setTypedAs(magnitude ? "magnitude" : "negative");
    }
  }

  private static void fill(
      CalibrationRecord row, NewCalibration.Measured measured, CurveResult result) {
    row.setProfileVersionId(measured.profileVersion());
    row.setAnalysisVersion(result.analysisVersion());
    row.setAsf(result.asf());
    row.setSlope(result.leastSquaresSlope());
    row.setSlopeStandardError(result.leastSquaresSlopeStandardError());
    row.setMaxDslUm(result.maxDsl());
    result.worstIsfPercent().ifPresent(row::setWorstIsfPercent);
    result.hysteresis().ifPresent(h -> row.setHysteresisUm(h.micrometres()));
    result.linearRange().ifPresent(range -> fill(row, range));
    row.setMidGapUm(result.midRangeGapMicrometres());
    result.midRangeVolts().ifPresent(row::setMidVolts);
    result.isfTrend().ifPresent(trend -> row.setIsfTrend(trend.direction().label()));
    row.setVerdict(result.verdict().label());
    row.setFindings(
        result.findings().stream().map(Finding::sentence).collect(Collectors.joining("\n")));
  }

  private static void fill(CalibrationRecord row, GapRange range) {
    row.setLinearFromUm(range.fromMicrometres());
    row.setLinearToUm(range.toMicrometres());
  }

  private static List<CalibrationReadingRecord> readings(
      Tx tx, long calibration, List<CurveReading> readings) {
    List<CalibrationReadingRecord> rows = new ArrayList<>();
    for (CurveReading reading : readings) {
      CalibrationReadingRecord row = tx.row(CALIBRATION_READING);
      row.setCalibrationId(calibration);
      row.setReadingNo((short) (rows.size() + 1));
      row.setRun(reading.run().label());
      row.setGapTyped(reading.gap().typed());
      row.setGapUm(reading.gapMicrometres());
      row.setVoltsTyped(reading.output().typed());
      row.setVolts(reading.volts());
      rows.add(row);
    }
    return rows;
  }

  Optional<Calibrated> numbered(DSLContext sql, String number) {
    return select(sql).where(CALIBRATION.NUMBER.eq(number)).fetchOptional(CalibrationStore::row);
  }

  /**
   * The newest first.
   *
   * @param which of columns of {@code calibration} alone
   */
  List<Calibrated> latest(DSLContext sql, Condition which, int most) {
    // the keys first, by index: joined to the rest the engine would sort all there are
    List<Long> newest =
        sql.select(CALIBRATION.ID)
            .from(CALIBRATION)
            .where(which)
            .orderBy(CALIBRATION.MEASURED_AT.desc(), CALIBRATION.ID.desc())
            .limit(most)
            .fetch(CALIBRATION.ID);
    return select(sql)
        .where(CALIBRATION.ID.in(newest))
        .orderBy(CALIBRATION.MEASURED_AT.desc(), CALIBRATION.ID.desc())
        .fetch(CalibrationStore::row);
  }

  /** The same of those that had been measured and were known then. */
  List<Calibrated> latest(DSLContext sql, Condition which, Viewpoint viewpoint, int most) {
    Condition measured = CALIBRATION.MEASURED_AT.le(Tx.moment(viewpoint.at()));
    if (viewpoint.asKnownNow()) {
      return latest(sql, which.and(measured), most);
    }
    Result<? extends Record> all =
        select(sql)
            .where(which)
            .and(measured)
            .orderBy(CALIBRATION.MEASURED_AT.desc(), CALIBRATION.ID.desc())
            .fetch();
    Set<Long> known = known(sql, viewpoint, all.getValues(CALIBRATION.CHANGE_ID));
    return all.stream()
        .filter(row -> known.contains(row.get(CALIBRATION.CHANGE_ID)))
        .limit(most)
        .map(CalibrationStore::row)
        .toList();
  }

  /** The newest as-left taken at each of these points of what was fitted there. */
  Map<Long, Calibrated> latestAsLeftByPoint(
      DSLContext sql, Collection<AsLeftFacts.Fitted> loops, Viewpoint viewpoint) {
    List<Long> points = loops.stream().map(AsLeftFacts.Fitted::point).toList();
    Condition fittedThere = CALIBRATION.POINT_ID.in(points).and(asFitted());
    return newest(sql, CALIBRATION.POINT_ID, fittedThere, viewpoint).stream()
        .collect(Collectors.toMap(c -> Objects.requireNonNull(c.point()), c -> c));
  }

  /** The newest as-left of each of these combinations, wherever it was taken. */
  Map<String, Calibrated> latestAsLeftByCombination(
      DSLContext sql, Collection<AsLeftFacts.Fitted> loops, Viewpoint viewpoint) {
    List<String> fingerprints = loops.stream().map(AsLeftFacts.Fitted::fingerprint).toList();
    List<Long> combinations =
        sql.select(COMBINATION.ID)
            .from(COMBINATION)
            .where(COMBINATION.FINGERPRINT.in(fingerprints))
            .fetch(COMBINATION.ID);
    Condition ofThem = CALIBRATION.COMBINATION_ID.in(combinations);
    return newest(sql, CALIBRATION.COMBINATION_ID, ofThem, viewpoint).stream()
        .collect(Collectors.toMap(Calibrated::fingerprint, c -> c));
  }

  /**
   * The newest as-left of each group; of two taken at one moment, the one entered later. Picked
   * here because joining a ranking back makes the embedded engine walk it once for every row.
   */
  private static List<Calibrated> newest(
      DSLContext sql, Field<Long> group, Condition which, Viewpoint viewpoint) {
    Result<Record3<Long, Long, Long>> all =
        sql.select(group, CALIBRATION.ID, CALIBRATION.CHANGE_ID)
            .from(CALIBRATION)
            .where(which)
            .and(asLeft())
            .and(viewpoint.asKnownNow() ? SupersededStore.stands() : DSL.noCondition())
            .and(RowByRow.of(CALIBRATION.MEASURED_AT).le(Tx.moment(viewpoint.at())))
            .orderBy(CALIBRATION.MEASURED_AT, CALIBRATION.ID)
            .fetch();
    Set<Long> known = known(sql, viewpoint, all.getValues(CALIBRATION.CHANGE_ID));
    Map<Long, Long> newest =
        all.stream()
            .filter(row -> viewpoint.asKnownNow() || known.contains(row.value3()))
            .collect(Collectors.toMap(Record3::value1, Record3::value2, (older, newer) -> newer));
    return select(sql).where(CALIBRATION.ID.in(newest.values())).fetch(CalibrationStore::row);
  }

  private static Set<Long> known(DSLContext sql, Viewpoint viewpoint, Collection<Long> changes) {
    Long entry = viewpoint.known();
    return entry == null ? Set.of() : KnownTimeStore.known(sql, entry, changes);
  }

  /** Taken at the point of what was fitted there. */
  static Condition ofPoint(long point) {
    return atPoint(point).and(asFitted());
  }

  /** Taken at the point, of whatever parts. */
  static Condition atPoint(long point) {
    return CALIBRATION.POINT_ID.eq(point);
  }

  static Condition asFitted() {
    return CALIBRATION.SETUP.isNull();
  }

  static Condition setup(Setup setup) {
    return setup == Setup.FITTED ? asFitted() : CALIBRATION.SETUP.eq(setup.word());
  }

  static Condition ofFingerprint(String fingerprint) {
    return CALIBRATION.COMBINATION_ID.in(
        DSL.select(COMBINATION.ID)
            .from(COMBINATION)
            .where(COMBINATION.FINGERPRINT.eq(fingerprint)));
  }

  static Condition withComponent(long component) {
    return CALIBRATION.COMBINATION_ID.in(
        DSL.select(COMBINATION_PART.COMBINATION_ID)
            .from(COMBINATION_PART)
            .where(COMBINATION_PART.COMPONENT_ID.eq(component)));
  }

  static Condition measuredIn(Span span) {
    return CALIBRATION
        .MEASURED_AT
        .ge(Tx.moment(span.from()))
        .and(CALIBRATION.MEASURED_AT.lt(Tx.moment(span.until())));
  }

  /** Taken of those parts at that place, of that stage, at that moment. */
  static Condition ofMoment(TakenWith with, Stage stage, Instant measuredAt) {
    return of(with).and(stage(stage)).and(CALIBRATION.MEASURED_AT.eq(Tx.moment(measuredAt)));
  }

  private static Condition of(TakenWith with) {
    Long point = with.atPoint();
    Condition place = setup(with.setup()).and(point == null ? DSL.noCondition() : atPoint(point));
    return with.parts().map(set -> place.and(ofFingerprint(set.fingerprint()))).orElse(place);
  }

  /** Until this transaction ends, nobody else keeps a calibration or a draft of the same. */
  static void hold(Tx tx, TakenWith with) {
    Long point = with.atPoint();
    if (point == null) {
      with.parts().ifPresent(set -> hold(tx, set));
    } else {
      tx.sql().select(POINT.ID).from(POINT).where(POINT.ID.eq(point)).forUpdate().fetchSingle();
    }
  }

  private static void hold(Tx tx, PartSet set) {
    tx.sql()
        .select(COMPONENT.ID)
        .from(COMPONENT)
        .where(COMPONENT.ID.eq(set.part(Slot.PROBE).number()))
        .forUpdate()
        .fetch();
  }

  static Condition asLeft() {
    return CALIBRATION.STAGE.in(Stage.AS_LEFT.word(), Stage.NOTHING_TOUCHED.word());
  }

  /**
   * @param word a verdict, or {@link #NO_CURVE}
   */
  static Condition verdict(String word) {
    return word.equals(NO_CURVE) ? CALIBRATION.OUTCOME.eq(NO_CURVE) : CALIBRATION.VERDICT.eq(word);
  }

  static Condition stage(Stage stage) {
    return CALIBRATION.STAGE.eq(stage.word());
  }

  /** Taken in that time. */
  static Condition between(Instant from, Instant until) {
    return CALIBRATION
        .MEASURED_AT
        .ge(Tx.moment(from))
        .and(CALIBRATION.MEASURED_AT.lt(Tx.moment(until)));
  }

  /** Older in the list than that calibration. */
  static Condition before(Instant measuredAt, long id) {
    return DSL.row(CALIBRATION.MEASURED_AT, CALIBRATION.ID).lt(Tx.moment(measuredAt), id);
  }

  private static SelectOnConditionStep<? extends Record> select(DSLContext sql) {
    return sql.select(
            CALIBRATION.asterisk(),
            COMBINATION.FINGERPRINT,
            POINT.TAG,
            CHANGE.ACTOR_NAME,
            CHANGE.MADE_AT,
            CHANGE.REASON)
        .from(CALIBRATION)
        .join(COMBINATION)
        .on(COMBINATION.ID.eq(CALIBRATION.COMBINATION_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(CALIBRATION.CHANGE_ID))
        .leftJoin(POINT)
        .on(POINT.ID.eq(CALIBRATION.POINT_ID));
  }

  private static Calibrated row(Record row) {
    return new Calibrated(
        row.get(CALIBRATION.ID),
        row.get(CALIBRATION.NUMBER),
        row.get(COMBINATION.FINGERPRINT),
        Setup.ofWord(row.get(CALIBRATION.SETUP)),
        row.get(CALIBRATION.POINT_ID),
        row.get(POINT.TAG),
        Stage.ofWord(row.get(CALIBRATION.STAGE)),
        row.get(CALIBRATION.MEASURED_AT).toInstant(),
        row.get(CALIBRATION.PERFORMED_BY),
        text(row.get(CALIBRATION.ZERO_USED)),
        text(row.get(CALIBRATION.TARGET_ALLOY)),
        row.get(CALIBRATION.VERDICT),
        row.get(CALIBRATION.NO_CURVE_REASON),
        row.get(CALIBRATION.ANALYSIS_VERSION),
        row.get(CALIBRATION.PROFILE_VERSION_ID),
        new Calibrated.Numbers(
            number(row.get(CALIBRATION.ASF)),
            number(row.get(CALIBRATION.SLOPE)),
            number(row.get(CALIBRATION.MAX_DSL_UM)),
            number(row.get(CALIBRATION.WORST_ISF_PERCENT)),
            number(row.get(CALIBRATION.MID_VOLTS)),
            row.get(CALIBRATION.ISF_TREND)),
        Arrays.stream(row.get(CALIBRATION.FINDINGS).split("\n")).filter(f -> !f.isBlank()).toList(),
        row.get(CALIBRATION.ORIGIN),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.REASON));
  }

  private static String text(@Nullable String text) {
    return text == null ? "" : text;
  }

  private static OptionalDouble number(@Nullable Double number) {
    return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  /** The readings as typed, in the order they were kept. */
  List<CurveReading> readings(DSLContext sql, long calibration) {
    Map.Entry<Unit, Unit> units = units(sql, calibration);
    return sql.selectFrom(CALIBRATION_READING)
        .where(CALIBRATION_READING.CALIBRATION_ID.eq(calibration))
        .orderBy(CALIBRATION_READING.READING_NO)
        .fetch(row -> reading(row, units.getKey(), units.getValue()));
  }

  private static Map.Entry<Unit, Unit> units(DSLContext sql, long calibration) {
    return sql.select(CALIBRATION.GAP_UNIT, CALIBRATION.VOLTS_UNIT)
        .from(CALIBRATION)
        .where(CALIBRATION.ID.eq(calibration))
        .and(CALIBRATION.GAP_UNIT.isNotNull())
        .fetchOptional(
            row ->
                Map.entry(
                    Unit.named(row.value1()).orElseThrow(), Unit.named(row.value2()).orElseThrow()))
        .orElse(Map.entry(Unit.MICROMETRE, Unit.VOLT));
  }

  private static CurveReading reading(CalibrationReadingRecord row, Unit gap, Unit volts) {
    return CurveReading.of(
        Run.named(row.getRun()).orElseThrow(),
        Reported.read(row.getGapTyped(), gap).orElseThrow(),
        Reported.read(row.getVoltsTyped(), volts).orElseThrow());
  }
}
