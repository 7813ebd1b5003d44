package loopwright.pack;

import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.Supplier;
import loopwright.bypass.Bypasses;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
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
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.standard.Standard;
import loopwright.standard.Standards;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Plans and keeps what comes back filled in: loop by loop, each as a whole or not at all. */
public final class Returns {
  static final String NONE_TYPED = "none";

  private final Packs packs;
  private final RegisteredProfiles profiles;
  private final Records records;
  private final ReturnOutlook outlook;

  /**
   * @param records where results go
   */
  public Returns(Packs packs, RegisteredProfiles profiles, Records records) {
    this.packs = packs;
    this.profiles = profiles;
    this.records = records;
    this.outlook = new ReturnOutlook(records);
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
    List<Standard> standards = records.standards().all(sql);
    Set<Long> openedAgain = packs.openedAgain(sql, outage);
    return new ReturnReader(sql, outage, packs, records.register().get(), file, complaints)
        .loops().stream()
            .filter(given -> wanted.test(given.loop().sheet().tag()))
            .map(given -> plan(sql, outage, file, given, standards, openedAgain))
            .toList();
  }

  private ReturnPlan.LoopPlan plan(
      DSLContext sql,
      Outage outage,
      FilledFile file,
      ReturnReader.Given given,
      List<Standard> standards,
      Set<Long> openedAgain) {
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
                standards));
    if (!openedAgain.contains(given.loop().point())) {
      refuseSecond(filled, given);
    }
    List<String> told = complaints.isEmpty() ? outlook.told(sql, outage, filled, read) : List.of();
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

  /** Serials that are not the planned ones, or not those of the stage before. */
  static Map<String, String> differing(
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
   * The same said twice is one word.
   *
   * @param seen {@link #mark} of the last word on the loop when the page was shown
   * @throws Refused if another word came back since, or the loop is not in the pack
   */
  void say(Tx tx, long id, long point, String seen, String outcome, String reason) {
    packs.outages().hold(tx, id);
    Returned now = packs.latest(tx.sql(), packs.outages().one(tx.sql(), id)).get(point);
    if (mark(now).equals(seen)) {
      say(tx, id, point, outcome, reason);
    } else if (now == null || !now.outcome().equals(outcome) || !now.reason().equals(reason)) {
      throw new Refused(
          PackProblem.SAID_MEANWHILE,
          now == null ? "The loop" : now.tag(),
          now == null ? "nothing" : now.outcome());
    }
  }

  /** What tells one word on a loop from the next. */
  static String mark(@Nullable Returned last) {
    return last == null ? "-" : last.cellsHash().substring(0, 12);
  }

  /**
   * Keeps what somebody says of a loop, whatever was said before.
   *
   * @throws Refused if it is not in the pack
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
