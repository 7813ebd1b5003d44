package loopwright.pack;

import java.math.BigDecimal;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.curve.Grid;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Chunks;
import loopwright.loop.Combinations;
import loopwright.loop.Judging;
import loopwright.matching.FamilyView;
import loopwright.matching.NominalLine;
import loopwright.matching.Verdict;
import loopwright.mounting.Mounting;
import loopwright.mounting.Mountings;
import loopwright.outage.Emergent;
import loopwright.outage.Outage;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.outage.Work;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointChannel;
import loopwright.plant.PointDetails;
import loopwright.problem.Text;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standards;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Writes loops' sheets from what the register knows now. */
public final class SheetWriter {
  private static final Length USUAL_TOLERANCE = Length.ofMetres("0.05");
  private static final int NEWEST = 20;

  private final Facts facts;

  SheetWriter(Facts facts) {
    this.facts = facts;
  }

  /** Where the facts come from. */
  public record Facts(
      Plant plant,
      Channels channels,
      Judging judging,
      Calibrations calibrations,
      RegisteredProfiles profiles,
      PutAside putAside,
      Mountings mountings,
      Standards standards,
      InstantSource clock) {}

  Facts facts() {
    return facts;
  }

  /** Sheets in the order of a walk along the shafts. */
  List<LoopSheet> sheets(
      DSLContext sql,
      Outage outage,
      List<Outages.Loop> walk,
      List<ScopeLine> scope,
      List<Emergent> emergent,
      Map<Work, List<String>> steps) {
    Map<Long, ScopeLine> taken = new HashMap<>();
    scope.forEach(line -> taken.put(line.point(), line));
    List<Outages.Loop> loops =
        walk.stream().filter(loop -> taken.containsKey(loop.point().id().number())).toList();
    Map<Long, Judging.Judged> judged = judged(sql, loops);
    Map<Long, List<String>> spares = facts.putAside().ofOutage(sql, outage.id());
    Map<Long, Mounting> mountings = facts.mountings().of(sql, taken.keySet());
    List<LoopSheet> sheets = new ArrayList<>();
    for (Outages.Loop loop : loops) {
      long point = loop.point().id().number();
      sheets.add(
          sheet(
              sql,
              loop,
              Objects.requireNonNull(judged.get(point)),
              jobs(outage, Objects.requireNonNull(taken.get(point)), emergent, steps),
              spares.getOrDefault(point, List.of()),
              mountings.getOrDefault(point, Mounting.NOTHING_SAID)));
    }
    return sheets;
  }

  private Map<Long, Judging.Judged> judged(DSLContext sql, List<Outages.Loop> loops) {
    Map<Long, Judging.Judged> judged = new HashMap<>();
    for (List<Outages.Loop> some : Chunks.of(loops, 500)) {
      List<Judging.Subject> subjects =
          some.stream()
              .map(l -> new Judging.Subject(l.point().id().number(), l.point().tag()))
              .toList();
      facts
          .judging()
          .judge(sql, subjects, facts.clock().instant())
          .forEach(one -> judged.put(one.subject().point(), one));
    }
    return judged;
  }

  private static List<LoopSheet.Job> jobs(
      Outage outage, ScopeLine line, List<Emergent> emergent, Map<Work, List<String>> steps) {
    Map<Work, String> found = new EnumMap<>(Work.class);
    emergent.stream()
        .filter(one -> one.point() == line.point())
        .forEach(one -> one.works().forEach(work -> found.put(work, one.found(outage.zone()))));
    return line.works().stream()
        .map(
            work ->
                new LoopSheet.Job(
                    work.label(),
                    steps.getOrDefault(work, List.of()),
                    found.getOrDefault(work, "")))
        .toList();
  }

  private LoopSheet sheet(
      DSLContext sql,
      Outages.Loop loop,
      Judging.Judged judged,
      List<LoopSheet.Job> jobs,
      List<String> spares,
      Mounting mounting) {
    Point point = loop.point();
    Optional<ToleranceProfiles.Stored> profile =
        facts.profiles().suiting(sql, point.id().number(), judged.chain());
    Expectation expectation = expectation(sql, judged, profile.map(p -> p.profile()).orElse(null));
    List<PointChannel> fed = facts.channels().ofPoint(sql, point.id());
    Length balance = judged.judgement().balance();
    return new LoopSheet(
        about(loop),
        ChainShown.of(judged),
        balance == null ? "" : balance.signedMetres() + " (" + balance.signedFeet() + ")",
        tolerance(judged).metres().toPlainString(),
        Quantities.gap(point.details().approvedGap()),
        expectedAtGap(point, profile.orElse(null), expectation),
        profile.map(stored -> limits(stored, expectation)).orElse(null),
        expectation.basis(),
        fed.stream().map(ChannelShown::line).toList(),
        votes(sql, fed),
        jobs,
        judged.judgement().findings().stream()
            .filter(finding -> finding.verdict().isWorseThan(Verdict.MATCHES))
            .map(finding -> Text.capital(finding.verdict().word()) + ": " + finding.message())
            .toList(),
        spares,
        mounting.facts().entrySet().stream()
            .map(fact -> fact.getKey() + ": " + fact.getValue())
            .toList());
  }

  private static LoopSheet.About about(Outages.Loop loop) {
    PointDetails details = loop.point().details();
    return new LoopSheet.About(
        details.tag(),
        loop.train(),
        loop.machine(),
        details.place(),
        details.kind().word(),
        details.surroundings().junctionBox(),
        details.surroundings().areaClass(),
        details.surroundings().shaftAlloy());
  }

  private static Length tolerance(Judging.Judged judged) {
    return judged.view().family().map(FamilyView::lengthTolerance).orElse(USUAL_TOLERANCE);
  }

  private Expectation expectation(
      DSLContext sql, Judging.Judged judged, @Nullable ToleranceProfile profile) {
    if (profile == null) {
      return Expectation.NOTHING;
    }
    Optional<String> fingerprint = Combinations.fingerprint(judged.chain());
    Expectation found =
        facts.calibrations().ofLoop(sql, judged.subject().point(), fingerprint, NEWEST).stream()
            .filter(c -> c.stage().isAsLeft() && c.hasCurve())
            .filter(c -> fingerprint.filter(c.fingerprint()::equals).isPresent())
            .findFirst()
            .flatMap(
                c ->
                    facts
                        .calibrations()
                        .curve(sql, c)
                        .map(curve -> Expectation.ofCurve(curve, profile, basis(c))))
            .orElse(Expectation.NOTHING);
    return found.line() != null ? found : ofFamily(judged);
  }

  private static String basis(Calibrated calibrated) {
    return "The last as-left curve of exactly these parts, %s of %s, which %s."
        .formatted(
            calibrated.number(),
            calibrated.measuredAt().atZone(ZoneOffset.UTC).toLocalDate(),
            calibrated.outcome().equals("conforms") ? "conforms" : "does not conform");
  }

  private static Expectation ofFamily(Judging.Judged judged) {
    FamilyView family = judged.view().family().orElse(null);
    NominalLine line = family == null ? null : family.line();
    return family == null || line == null
        ? Expectation.NOTHING
        : Expectation.ofFamily(line, family.code());
  }

  private static String expectedAtGap(
      Point point, ToleranceProfiles.@Nullable Stored profile, Expectation expectation) {
    Reported gap = point.details().approvedGap();
    if (gap == null || profile == null) {
      return "";
    }
    return Quantities.volts(expectation.volts(gap.canonical(), profile.profile().slope()));
  }

  private static LoopSheet.Limits limits(ToleranceProfiles.Stored stored, Expectation expectation) {
    ToleranceProfile profile = stored.profile();
    Grid grid = profile.grids().get(0);
    double slope = profile.slope();
    double corridor = profile.dslLimitMicrometres() * slope / 1000;
    List<LoopSheet.Reading> readings = new ArrayList<>();
    for (BigDecimal gap : grid.positions()) {
      double um = grid.unit().toCanonical(gap).doubleValue();
      OptionalDouble line = expectation.onLine(um, slope);
      readings.add(
          new LoopSheet.Reading(
              Numbers.plain(gap),
              Quantities.other(gap, grid.unit()),
              Quantities.volts(expectation.volts(um, slope)),
              Quantities.volts(shifted(line, -corridor)),
              Quantities.volts(shifted(line, corridor))));
    }
    return new LoopSheet.Limits(
        profile.code(),
        Long.toString(stored.version()),
        (profile.name() + "; " + profile.source() + " " + profile.edition()).strip(),
        grid.unit().symbol(),
        Quantities.scaleFactors(profile.isfLowest(), profile.isfHighest()),
        Quantities.steps(profile, grid),
        Quantities.gap(profile.dslLimit()),
        readings);
  }

  private static OptionalDouble shifted(OptionalDouble volts, double by) {
    return volts.isPresent() ? OptionalDouble.of(volts.getAsDouble() + by) : volts;
  }

  private List<String> votes(DSLContext sql, List<PointChannel> fed) {
    return fed.stream()
        .flatMap(channel -> facts.channels().groupsOf(sql, channel.channel().id()).stream())
        .map(group -> "%s votes %s".formatted(group.name(), group.logic()))
        .distinct()
        .toList();
  }
}
