package loopwright.pack;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Stage;
import loopwright.cause.TappingPoint;
import loopwright.db.Tx;
import loopwright.fieldcheck.MachineState;
import loopwright.fieldcheck.NewGapReading;
import loopwright.fieldcheck.Warmth;
import loopwright.loop.Chain;
import loopwright.loop.Judging;
import loopwright.outage.Outage;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Writes what came back of one loop through the features that keep such records. */
final class ReturnRecorder {
  /** Somebody read it at the machine and wrote it down, as on a page: it is there to be signed. */
  private static final String ORIGIN = "entered";

  private static final int MOST_TOLD = 2_000;

  private final Packs packs;
  private final Returns.Records records;
  private final Outage outage;

  ReturnRecorder(Packs packs, Returns.Records records, Outage outage) {
    this.packs = packs;
    this.records = records;
    this.outage = outage;
  }

  /**
   * Surveys first where a serial differs, then the calibrations, then that it came back.
   *
   * @return what was recorded, in words
   */
  String record(Tx tx, LoopReturn read) {
    List<String> told = new ArrayList<>();
    Map<String, String> found =
        survey(tx, read, read.found(), Map.of(), Column.AS_FOUND.heading(), told);
    survey(tx, read, read.left(), found, Column.AS_LEFT.heading(), told);
    Map<Stage, String> numbers = calibrations(tx, read, told);
    gapVoltages(tx, read);
    bypass(tx, read, told);
    String words = shortened(String.join(" ", told));
    packs
        .store()
        .addReturn(
            tx,
            outage.id(),
            new Returned(
                read.loop().point(),
                read.tag(),
                read.loop().id(),
                read.outcome(),
                read.reason(),
                read.left().by().isEmpty() ? read.found().by() : read.left().by(),
                read.found().gapVolts(),
                read.left().gapVolts(),
                numbers.getOrDefault(read.foundStage(), ""),
                numbers.getOrDefault(Stage.AS_LEFT, ""),
                words,
                read.hash(),
                read.fileName(),
                tx.act().actorName(),
                tx.at()));
    return words;
  }

  /** What it tells of stands in records of its own. */
  private static String shortened(String words) {
    return words.length() <= MOST_TOLD ? words : words.substring(0, MOST_TOLD - 1) + "…";
  }

  private Map<String, String> survey(
      Tx tx,
      LoopReturn read,
      StageFilled stage,
      Map<String, String> base,
      String heading,
      List<String> told) {
    Map<String, String> differing = Returns.toSurvey(read, stage, base);
    Instant at = stage.at();
    if (differing.isEmpty() || at == null) {
      return base;
    }
    long point = read.loop().point();
    Form form = records.proposed().asFitted(tx.sql(), point, outage.zone());
    differing.forEach(
        (slot, serial) -> form.put(slot, serial.equalsIgnoreCase("none") ? "" : serial));
    Chain chain =
        records
            .proposed()
            .chain(tx.sql(), point, form, at, outage.zone())
            .orElseThrow(
                () ->
                    new Refused(
                        PackProblem.NOT_KEPT,
                        read.fileName(),
                        "",
                        "",
                        read.tag(),
                        String.join(" ", form.complaints().values())));
    records.configuration().holdStill(tx, point, chain);
    Judging.Judged judged =
        records
            .configuration()
            .survey(
                tx,
                point,
                chain,
                at,
                "Work pack %s, %s: %s".formatted(outage.number(), heading, read.fileName()));
    told.add(
        "Survey, %s: %s; judged %s."
            .formatted(
                heading,
                String.join(", ", differing.values()),
                judged.judgement().verdict().word()));
    return differing;
  }

  /** Their numbers by stage; what somebody typed on the loop's page already is that very record. */
  private Map<Stage, String> calibrations(Tx tx, LoopReturn read, List<String> told) {
    List<NewCalibration> all = calibrations(read);
    Map<Stage, String> numbers = new EnumMap<>(Stage.class);
    List<NewCalibration> fresh = new ArrayList<>();
    for (NewCalibration one : all) {
      records
          .calibrations()
          .same(tx.sql(), one)
          .ifPresentOrElse(kept -> numbers.put(one.stage(), kept.number()), () -> fresh.add(one));
    }
    List<String> added = records.calibrations().keepAll(tx, fresh);
    for (int i = 0; i < added.size(); i++) {
      numbers.put(fresh.get(i).stage(), added.get(i));
    }
    Stream.of(read.found(), read.left())
        .flatMap(stage -> stage.standards().told().stream())
        .distinct()
        .forEach(told::add);
    numbers.forEach((stage, number) -> told.add(Text.capital(stage.word()) + " " + number + "."));
    return numbers;
  }

  /** What came back, as calibrations to keep: found before left. */
  static List<NewCalibration> calibrations(LoopReturn read) {
    List<NewCalibration> all = new ArrayList<>();
    calibration(read, read.found(), read.foundStage()).ifPresent(all::add);
    calibration(read, read.left(), Stage.AS_LEFT).ifPresent(all::add);
    return all;
  }

  private static Optional<NewCalibration> calibration(
      LoopReturn read, StageFilled stage, Stage as) {
    Instant at = stage.at();
    if (!stage.hasResult() || at == null) {
      return Optional.empty();
    }
    return Optional.of(
        new NewCalibration(
            read.loop().point(),
            as,
            at,
            stage.by(),
            stage.zero(),
            read.loop().sheet().loop().alloy(),
            stage.outcome(),
            ORIGIN,
            stage.standards().certificates()));
  }

  private void bypass(Tx tx, LoopReturn read, List<String> told) {
    BypassFilled filled = read.bypass();
    if (filled == null) {
      return;
    }
    long person = Objects.requireNonNull(tx.act().actorId());
    String number =
        records
            .bypasses()
            .bringBack(tx, filled.bypass(), filled.removal(), person, read.fileName());
    told.add(
        "Bypass %s is %s in the log%s."
            .formatted(
                filled.bypass().siteNumber(),
                number,
                filled.removal() == null ? "" : ", taken off, to be proved"));
  }

  private void gapVoltages(Tx tx, LoopReturn read) {
    List<NewGapReading> readings =
        Stream.of(read.found(), read.left())
            .map(stage -> gapReading(read, stage, outage))
            .flatMap(Optional::stream)
            .toList();
    if (!readings.isEmpty()) {
      records.gapReadings().keepAll(tx, readings);
    }
  }

  /**
   * The gap voltage of a stage.
   *
   * @throws Refused if no loop can give it
   */
  static Optional<NewGapReading> gapReading(LoopReturn read, StageFilled stage, Outage outage) {
    Instant at = stage.at();
    return stage.gapVolts().isEmpty() || at == null || stage.by().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new NewGapReading(
                read.loop().point(),
                at,
                stage.by(),
                Reported.read(stage.gapVolts(), Unit.VOLT).orElseThrow(),
                TappingPoint.DRIVER,
                MachineState.REST,
                Warmth.NOT_RECORDED,
                "",
                "Work pack " + outage.number(),
                ORIGIN));
  }
}
