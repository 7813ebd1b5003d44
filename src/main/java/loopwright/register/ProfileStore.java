package loopwright.register;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.TOLERANCE_PROFILE;
import static loopwright.db.gen.Tables.TOLERANCE_PROFILE_VERSION;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.curve.Grid;
import loopwright.curve.ShiftRule;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ToleranceProfileRecord;
import loopwright.db.gen.tables.records.ToleranceProfileVersionRecord;
import loopwright.dynamic.ResponseBand;
import loopwright.problem.Refused;
import loopwright.uncertainty.DecisionRule;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.impl.DSL;

/** Tolerance profiles and their versions. */
final class ProfileStore {
  private static final BigDecimal MOST_ISF_PERCENT = BigDecimal.valueOf(50);

  boolean isEmpty(DSLContext sql) {
    return !sql.fetchExists(TOLERANCE_PROFILE);
  }

  List<ToleranceProfiles.Stored> newest(DSLContext sql) {
    Map<String, ToleranceProfiles.Stored> first = new LinkedHashMap<>();
    fetch(sql, DSL.noCondition())
        .forEach(stored -> first.putIfAbsent(stored.profile().code(), stored));
    return List.copyOf(first.values());
  }

  List<ToleranceProfiles.Stored> versions(DSLContext sql, String code) {
    return fetch(sql, TOLERANCE_PROFILE.CODE.eq(code));
  }

  Optional<ToleranceProfiles.Stored> inForce(DSLContext sql, String code, Instant moment) {
    List<ToleranceProfiles.Stored> newestFirst = versions(sql, code);
    Map<Long, OffsetDateTime> entered =
        sql.select(TOLERANCE_PROFILE_VERSION.ID, CHANGE.MADE_AT)
            .from(TOLERANCE_PROFILE_VERSION)
            .join(CHANGE)
            .on(CHANGE.ID.eq(TOLERANCE_PROFILE_VERSION.CHANGE_ID))
            .where(
                TOLERANCE_PROFILE_VERSION.ID.in(
                    newestFirst.stream().map(ToleranceProfiles.Stored::version).toList()))
            .fetchMap(TOLERANCE_PROFILE_VERSION.ID, CHANGE.MADE_AT);
    return newestFirst.stream()
        .filter(
            stored ->
                !Objects.requireNonNull(entered.get(stored.version())).toInstant().isAfter(moment))
        .findFirst()
        .or(() -> newestFirst.stream().reduce((newer, older) -> older));
  }

  Optional<ToleranceProfiles.Stored> version(DSLContext sql, long number) {
    return fetch(sql, TOLERANCE_PROFILE_VERSION.ID.eq(number)).stream().findFirst();
  }

  private static List<ToleranceProfiles.Stored> fetch(DSLContext sql, Condition which) {
    Result<? extends Record> rows =
        sql.select(
                TOLERANCE_PROFILE_VERSION.asterisk(),
                TOLERANCE_PROFILE.CODE,
                TOLERANCE_PROFILE.NAME)
            .from(TOLERANCE_PROFILE_VERSION)
            .join(TOLERANCE_PROFILE)
            .on(TOLERANCE_PROFILE.ID.eq(TOLERANCE_PROFILE_VERSION.PROFILE_ID))
            .where(which)
            .orderBy(TOLERANCE_PROFILE.CODE, TOLERANCE_PROFILE_VERSION.VERSION_NO.desc())
            .fetch();
    Map<Long, List<ResponseBand.Stretch>> bands =
        BandStore.of(
            sql,
            rows.stream()
                .filter(row -> row.get(TOLERANCE_PROFILE_VERSION.RESPONSE_SOURCE) != null)
                .map(row -> row.get(TOLERANCE_PROFILE_VERSION.ID))
                .toList());
    return rows.stream().map(row -> stored(row, bands)).toList();
  }

  long insert(Tx tx, ToleranceProfile profile, ProfileTerms terms) {
    if (profile.isfTolerancePercent().compareTo(MOST_ISF_PERCENT) > 0) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE,
          "An ISF tolerance",
          profile.isfTolerancePercent() + " %",
          "more than 0 and at most 50 %");
    }
    long profileId = profileId(tx, profile);
    ToleranceProfileVersionRecord row = tx.row(TOLERANCE_PROFILE_VERSION);
    row.setProfileId(profileId);
    row.setVersionNo(nextVersion(tx.sql(), profileId));
    row.setSource(profile.source());
    row.setEdition(profile.edition());
    row.setScaleFactor(profile.nominal().declared());
    row.setScaleFactorUnit(profile.nominal().unit().symbol());
    row.setIsfPercent(profile.isfTolerancePercent());
    row.setDeviationTyped(profile.dslLimit().toString());
    row.setDeviationUm(profile.dslLimitMicrometres());
    row.setShiftRule(profile.shiftRule().label());
    fillGrids(row, profile.grids());
    row.setDecisionRule(terms.rule().label());
    row.setRiskLimit(
        terms.rule().kind() == DecisionRule.Kind.RISK_LIMIT ? terms.rule().riskLimit() : null);
    row.setReviewAsked(terms.reviewAsked());
    row.setTemperatureFromC(terms.temperatures().map(TemperatureRange::from).orElse(null));
    row.setTemperatureToC(terms.temperatures().map(TemperatureRange::to).orElse(null));
    row.setResponseSource(terms.response().map(ResponseBand::source).orElse(null));
    long id = tx.insert(row).getId();
    terms.response().ifPresent(band -> BandStore.insert(tx, id, band));
    return id;
  }

  private static long profileId(Tx tx, ToleranceProfile profile) {
    return tx.sql()
        .fetchOptional(TOLERANCE_PROFILE, TOLERANCE_PROFILE.CODE.eq(profile.code()))
        .orElseGet(
            () -> {
              ToleranceProfileRecord row = tx.row(TOLERANCE_PROFILE);
              row.setCode(profile.code());
              row.setName(profile.name());
              return tx.insert(row);
            })
        .getId();
  }

  private static int nextVersion(DSLContext sql, long profileId) {
    return sql.select(
            DSL.coalesce(DSL.max(TOLERANCE_PROFILE_VERSION.VERSION_NO), DSL.inline(0)).plus(1))
        .from(TOLERANCE_PROFILE_VERSION)
        .where(TOLERANCE_PROFILE_VERSION.PROFILE_ID.eq(profileId))
        .fetchSingle()
        .value1();
  }

  /** Where a profile has a grid in mil only, the µm columns hold exactly its conversion. */
  private static void fillGrids(ToleranceProfileVersionRecord row, List<Grid> grids) {
    Grid first = grids.get(0);
    Grid metric = in(Unit.MICROMETRE, grids).orElse(first);
    row.setGridFromUm(metric.unit().toCanonical(metric.from()));
    row.setGridToUm(metric.unit().toCanonical(metric.to()));
    row.setGridStepUm(metric.unit().toCanonical(metric.step()));
    in(Unit.MIL, grids)
        .ifPresent(
            mil -> {
              row.setGridFromMil(mil.from());
              row.setGridToMil(mil.to());
              row.setGridStepMil(mil.step());
            });
  }

  private static Optional<Grid> in(Unit unit, List<Grid> grids) {
    return grids.stream().filter(grid -> grid.unit() == unit).findFirst();
  }

  private static ToleranceProfiles.Stored stored(
      Record any, Map<Long, List<ResponseBand.Stretch>> bands) {
    ToleranceProfileVersionRecord row = any.into(TOLERANCE_PROFILE_VERSION);
    ToleranceProfile profile =
        new ToleranceProfile(
            any.get(TOLERANCE_PROFILE.CODE),
            any.get(TOLERANCE_PROFILE.NAME),
            row.getVersionNo(),
            row.getSource(),
            row.getEdition(),
            new ScaleFactor(
                plain(row.getScaleFactor()), Unit.named(row.getScaleFactorUnit()).orElseThrow()),
            plain(row.getIsfPercent()),
            reported(row.getDeviationTyped()),
            shiftRule(row.getShiftRule()),
            grids(row));
    return new ToleranceProfiles.Stored(
        row.getId(),
        profile,
        new ProfileTerms(
            rule(row),
            row.getReviewAsked(),
            temperatures(row),
            Optional.ofNullable(bands.get(row.getId()))
                .map(stretches -> new ResponseBand(row.getResponseSource(), stretches))));
  }

  private static Optional<TemperatureRange> temperatures(ToleranceProfileVersionRecord row) {
    return row.getTemperatureFromC() == null
        ? Optional.empty()
        : Optional.of(
            new TemperatureRange(plain(row.getTemperatureFromC()), plain(row.getTemperatureToC())));
  }

  private static DecisionRule rule(ToleranceProfileVersionRecord row) {
    return switch (row.getDecisionRule()) {
      case "guarded" -> DecisionRule.guarded();
      case "risk limit" -> DecisionRule.riskLimit(row.getRiskLimit());
      default -> DecisionRule.simple();
    };
  }

  private static Reported reported(String typed) {
    int blank = typed.lastIndexOf(' ');
    Unit unit = Unit.named(typed.substring(blank + 1)).orElseThrow();
    return Reported.read(typed.substring(0, blank), unit).orElseThrow();
  }

  private static ShiftRule shiftRule(String label) {
    return Arrays.stream(ShiftRule.values())
        .filter(rule -> rule.label().equals(label))
        .findFirst()
        .orElseThrow();
  }

  private static List<Grid> grids(ToleranceProfileVersionRecord row) {
    Grid metric =
        new Grid(
            Unit.MICROMETRE,
            plain(row.getGridFromUm()),
            plain(row.getGridToUm()),
            plain(row.getGridStepUm()));
    if (row.getGridFromMil() == null) {
      return List.of(metric);
    }
    Grid mil =
        new Grid(
            Unit.MIL,
            plain(row.getGridFromMil()),
            plain(row.getGridToMil()),
            plain(row.getGridStepMil()));
    List<Grid> grids = new ArrayList<>();
    if (!isConversion(metric, mil)) {
      grids.add(metric);
    }
    grids.add(mil);
    return grids;
  }

  private static boolean isConversion(Grid metric, Grid mil) {
    return same(metric.from(), mil.from())
        && same(metric.to(), mil.to())
        && same(metric.step(), mil.step());
  }

  private static boolean same(BigDecimal micrometres, BigDecimal mil) {
    return Unit.MIL.toCanonical(mil).compareTo(micrometres) == 0;
  }

  private static BigDecimal plain(BigDecimal number) {
    return new BigDecimal(Numbers.plain(number));
  }
}
