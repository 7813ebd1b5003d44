package loopwright.pack;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.bypass.Bypass;
import loopwright.bypass.NewBypass;
import loopwright.calibration.NewCalibration;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.loop.Judging;
import loopwright.outage.Outage;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Form;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Says what would become of a loop that came back, before anything is written. */
final class ReturnOutlook {
  private final Returns.Records records;

  ReturnOutlook(Returns.Records records) {
    this.records = records;
  }

  /** What would be recorded, in sentences; serials that no part has are complained of. */
  List<String> told(DSLContext sql, Outage outage, FilledLoop filled, LoopReturn read) {
    List<String> told = new ArrayList<>();
    told.add(Text.capital(read.outcome()) + (read.reason().isEmpty() ? "." : ": " + read.reason()));
    Map<String, String> base = Map.of();
    for (Column column : List.of(Column.AS_FOUND, Column.AS_LEFT)) {
      StageFilled stage = column == Column.AS_FOUND ? read.found() : read.left();
      Instant at = stage.at();
      Map<String, String> differing = Returns.differing(read, stage, base);
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
        (slot, serial) ->
            form.put(slot, serial.equalsIgnoreCase(Returns.NONE_TYPED) ? "" : serial));
    return form;
  }
}
