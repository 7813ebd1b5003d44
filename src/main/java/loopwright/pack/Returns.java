package loopwright.pack;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import loopwright.bypass.Bypass;
import loopwright.bypass.Bypasses;
import loopwright.bypass.NewBypass;
import loopwright.calibration.Calibrations;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.RegisteredProfiles;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.db.Tx;
import loopwright.fieldcheck.GapReadings;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.loop.Proposed;
import loopwright.outage.Outage;
import loopwright.outage.OutageProblem;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.web.Form;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Plans and keeps what comes back filled in: loop by loop, each as a whole or not at all. */
public final class Returns {
  private static final String NONE_TYPED = "none";

  private final Packs packs;
  private final RegisteredProfiles profiles;
  private final Records records;

  /**
   * @param records where results go
   */
  public Returns(Packs packs, RegisteredProfiles profiles, Records records) {
    this.packs = packs;
    this.profiles = profiles;
    this.records = records;
  }

  /** The features that keep results. */
  public record Records(
      Proposed proposed,
      Judging judging,
      Configuration configuration,
      Calibrations calibrations,
      GapReadings gapReadings,
      Standards standards,
      Bypasses bypasses,
      InstantSource clock,
      Supplier<UUID> register) {}

  Packs packs() {
    return packs;
  }

  Records records() {
    return records;
  }

  RegisteredProfiles profiles() {
    return profiles;
  }

  /** What would become of that file; nothing is written. */
  ReturnPlan plan(DSLContext sql, Outage outage, String name, byte[] bytes) {
    Complaints complaints = new Complaints();
    FilledFile file = FilledFile.read(name, bytes, complaints);
    List<ReturnPlan.LoopPlan> loops =
        complaints.isEmpty() ? plans(sql, outage, file, complaints, any -> true) : List.of();
    return new ReturnPlan(Frozen.hash(bytes), name, file, complaints.kept(), loops);
  }

  /**
   * @param wanted which loops to look at, by tag
   */
  List<ReturnPlan.LoopPlan> plans(
      DSLContext sql,
      Outage outage,
      FilledFile file,
      Complaints complaints,
      Predicate<String> wanted) {
    return new ReturnReader(sql, outage, packs, records.register().get(), file, complaints)
        .loops().stream()
            .filter(given -> wanted.test(given.loop().sheet().tag()))
            .map(given -> plan(sql, outage, file, given))
            .toList();
  }

  private ReturnPlan.LoopPlan plan(
      DSLContext sql, Outage outage, FilledFile file, ReturnReader.Given given) {
    Complaints complaints = given.complaints();
    FilledLoop filled = new FilledLoop(file, given.loop().sheet(), given.rows(), complaints);
    if (filled.isBlank() && complaints.isEmpty()) {
      return fate(given, ReturnPlan.Fate.BLANK, List.of(), List.of(), null);
    }
    if (isKnown(given, filled.hash())) {
      return fate(given, ReturnPlan.Fate.BEFORE, List.of(), List.of(), null);
    }
    LoopReturn read =
        LoopReturn.read(
            filled,
            given.loop(),
            file.name(),
            outage.id(),
            new StageFilled.With(
                outage.zone(),
                records.clock().instant(),
                profile(sql, given.loop().sheet()),
                records.standards().all(sql)));
    refuseSecond(filled, given);
    List<String> told = complaints.isEmpty() ? told(sql, outage, filled, read) : List.of();
    if (!complaints.isEmpty()) {
      return fate(given, ReturnPlan.Fate.REFUSED, List.of(), List.of(), null);
    }
    ReturnPlan.Fate fate = read.questions().isEmpty() ? ReturnPlan.Fate.KEEP : ReturnPlan.Fate.ASK;
    return fate(given, fate, told, read.questions(), read);
  }

  private static ReturnPlan.LoopPlan fate(
      ReturnReader.Given given,
      ReturnPlan.Fate fate,
      List<String> told,
      List<String> questions,
      @Nullable LoopReturn read) {
    return new ReturnPlan.LoopPlan(
        given.loop().sheet().tag(), fate, given.complaints().kept(), told, questions, read);
  }

  private static boolean isKnown(ReturnReader.Given given, String hash) {
    return given.before().stream().anyMatch(returned -> returned.cellsHash().equals(hash));
  }

  /** What came back as done stays; a misread curve is put right on the loop's own page. */
  private static void refuseSecond(FilledLoop filled, ReturnReader.Given given) {
    given.before().stream()
        .filter(Returned::isDone)
        .findFirst()
        .ifPresent(
            done ->
                filled.complain(
                    filled.place(Item.OUTCOME, "", Column.AS_LEFT),
                    PackProblem.RETURNED_BEFORE,
                    done.tag(),
                    done.who()));
  }

  private ToleranceProfiles.@Nullable Stored profile(DSLContext sql, LoopSheet sheet) {
    LoopSheet.Limits limits = sheet.limits();
    return limits == null
        ? null
        : profiles.version(sql, Long.parseLong(limits.version())).orElse(null);
  }

  /** What would be recorded, in sentences; serials that no part has are complained of. */
  private List<String> told(DSLContext sql, Outage outage, FilledLoop filled, LoopReturn read) {
    List<String> told = new ArrayList<>();
    told.add(Text.capital(read.outcome()) + (read.reason().isEmpty() ? "." : ": " + read.reason()));
    Map<String, String> base = Map.of();
    for (Column column : List.of(Column.AS_FOUND, Column.AS_LEFT)) {
      StageFilled stage = column == Column.AS_FOUND ? read.found() : read.left();
      Instant at = stage.at();
      Map<String, String> differing = differing(read, stage, base);
      if (at != null && !differing.isEmpty()) {
        Form form = form(sql, outage, read, base, differing);
        Optional<loopwright.loop.Chain> chain =
            records.proposed().chain(sql, read.loop().point(), form, at, outage.zone());
        form.complaints()
            .forEach(
                (slot, sentence) ->
                    filled.complain(
                        filled.place(Item.SERIAL, slot, column),
                        PackProblem.UNKNOWN_SERIAL,
                        sentence));
        chain.ifPresent(c -> told.add(surveyed(sql, read, column, differing, c, at)));
        base = differing;
      }
      curve(stage, column).ifPresent(told::add);
      stage.standards().told().ifPresent(told::add);
      refuseVolts(filled, column, read, stage, outage);
      refuseFuture(filled, column, at);
    }
    bypass(sql, outage, read).ifPresent(told::add);
    return told;
  }

  private Optional<String> bypass(DSLContext sql, Outage outage, LoopReturn read) {
    BypassFilled filled = read.bypass();
    if (filled == null) {
      return Optional.empty();
    }
    NewBypass told = filled.bypass();
    String off =
        filled.removal() == null
            ? "on"
            : "off since "
                + SiteMoment.shown(filled.removal().at(), outage.zone())
                + ", to be proved by a second person";
    return Optional.of(
        records
            .bypasses()
            .numbered(sql, told.point(), told.siteNumber())
            .map(known -> "Bypass %s: %s.".formatted(told.siteNumber(), known(known, told, off)))
            .orElse("Bypass %s: goes into the log; %s.".formatted(told.siteNumber(), off)));
  }

  private static String known(Bypass known, NewBypass told, String off) {
    return "in the log already as "
        + known.number()
        + (known.isToldBy(told) ? "" : ", which stays as it was entered although the sheet differs")
        + "; "
        + (known.isRemoved() ? "said there to be off" : off);
  }

  private static void refuseVolts(
      FilledLoop filled, Column column, LoopReturn read, StageFilled stage, Outage outage) {
    try {
      ReturnRecorder.gapReading(read, stage, outage);
    } catch (Refused impossible) {
      filled.complain(
          filled.place(Item.GAP_VOLTAGE, "", column), PackProblem.READING, impossible.getMessage());
    }
  }

  private void refuseFuture(FilledLoop filled, Column column, @Nullable Instant at) {
    if (at != null && at.isAfter(records.clock().instant())) {
      filled.complain(
          filled.place(Item.MEASURED_AT, "", column),
          PackProblem.READING,
          "This moment lies in the future. Check day and clock.");
    }
  }

  private String surveyed(
      DSLContext sql,
      LoopReturn read,
      Column column,
      Map<String, String> differing,
      loopwright.loop.Chain chain,
      Instant at) {
    Judging.Judged judged =
        records
            .judging()
            .judge(sql, new Judging.Subject(read.loop().point(), read.tag()), chain, at);
    return "Survey, %s: %s; the loop would be judged %s."
        .formatted(column.heading(), inWords(differing), judged.judgement().verdict().word());
  }

  private static String inWords(Map<String, String> serials) {
    return serials.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(entry -> entry.getKey() + " " + entry.getValue())
        .collect(Collectors.joining(", "));
  }

  private static Optional<String> curve(StageFilled stage, Column column) {
    NewCalibration.Measured measured = stage.curve();
    if (measured != null) {
      CurveResult result = CurveAnalysis.of(measured.curve(), measured.profile());
      return Optional.of("Curve, %s: %s.".formatted(column.heading(), result.verdict().label()));
    }
    return stage.noCurve().isEmpty()
        ? Optional.empty()
        : Optional.of("No curve, %s: %s".formatted(column.heading(), stage.noCurve()));
  }

  /** Serials that are not the planned ones, or not those of the stage before. */
  private static Map<String, String> differing(
      LoopReturn read, StageFilled stage, Map<String, String> base) {
    Map<String, String> differing = new LinkedHashMap<>(base);
    stage
        .serials()
        .forEach(
            (slot, serial) -> {
              String before =
                  base.containsKey(slot) ? base.get(slot) : read.loop().sheet().planned(slot);
              if (!serial.equalsIgnoreCase(before)
                  && !(serial.equalsIgnoreCase(NONE_TYPED) && before.isEmpty())) {
                differing.put(slot, serial);
              }
            });
    return differing.equals(base) ? Map.of() : differing;
  }

  /** The loop as on record with those serials in place. */
  private Form form(
      DSLContext sql,
      Outage outage,
      LoopReturn read,
      Map<String, String> base,
      Map<String, String> differing) {
    Form form = records.proposed().asFitted(sql, read.loop().point(), outage.zone());
    Map<String, String> all = new LinkedHashMap<>(base);
    all.putAll(differing);
    all.forEach(
        (slot, serial) -> form.put(slot, serial.equalsIgnoreCase(NONE_TYPED) ? "" : serial));
    return form;
  }

  /**
   * Keeps one loop of a plan; read again inside the change, so that what happened meanwhile counts.
   *
   * @return what was recorded, in words
   * @throws Refused if it can't be kept; then nothing of it is
   */
  String keep(Tx tx, Outage outage, FilledFile file, String tag, boolean confirmed) {
    packs.outages().hold(tx, outage.id());
    Outage now = packs.outages().one(tx.sql(), outage.id());
    Outages.refuseClosed(now);
    ReturnPlan.LoopPlan plan =
        plans(tx.sql(), now, file, new Complaints(), tag::equals).stream()
            .findFirst()
            .orElseThrow(() -> new Refused(PackProblem.FORGOTTEN));
    LoopReturn read = plan.read();
    if (read == null) {
      String why =
          plan.problems().stream().map(Complaint::message).findFirst().orElse(plan.fate().word());
      throw new Refused(PackProblem.NOT_KEPT, file.name(), "", "", tag, why);
    }
    if (!plan.questions().isEmpty() && !confirmed) {
      throw new Refused(PackProblem.QUESTIONS, tag);
    }
    return new ReturnRecorder(packs, records, now).record(tx, read);
  }

  /**
   * Keeps what somebody says of a loop without a sheet: that it is not done, or failed, and why.
   *
   * @throws Refused if it came back as done already, or is not in the pack
   */
  void say(Tx tx, long id, long point, String outcome, String reason) {
    packs.outages().hold(tx, id);
    Outage outage = packs.outages().one(tx.sql(), id);
    Outages.refuseClosed(outage);
    ScopeLine line =
        packs.outages().scope(tx.sql(), id).stream()
            .filter(one -> one.point() == point)
            .findFirst()
            .orElseThrow(() -> new Refused(OutageProblem.NO_LOOP));
    packs
        .store()
        .addReturn(
            tx,
            id,
            new Returned(
                point,
                line.tag(),
                null,
                outcome,
                reason,
                tx.act().actorName(),
                "",
                "",
                "",
                "",
                "Said on the page.",
                Frozen.hash(outcome + "|" + reason + "|" + tx.changeId()),
                "",
                tx.act().actorName(),
                tx.at()));
  }

  /** Serials to record as surveyed for a stage; empty where the plan holds. */
  static Map<String, String> toSurvey(
      LoopReturn read, StageFilled stage, Map<String, String> base) {
    return differing(read, stage, base);
  }
}
