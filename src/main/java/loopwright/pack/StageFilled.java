package loopwright.pack;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Zero;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.CurveReading;
import loopwright.curve.Remark;
import loopwright.curve.SignConvention;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standard;
import loopwright.time.SiteMoment;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What was filled in for as found, or for as left.
 *
 * @param at when it was measured; null when nobody says
 * @param serials by slot, as typed; only those that were typed
 * @param gapVolts at rest, as typed; empty when not read
 * @param curve what was measured, with the profile it is judged by; null without readings
 * @param noCurve why there is none; empty where nobody says
 * @param loose what was read although there was no curve to take
 * @param standards with which it was measured
 * @param questions to be confirmed before it is kept
 */
record StageFilled(
    @Nullable Instant at,
    String by,
    Zero zero,
    Map<String, String> serials,
    String gapVolts,
    NewCalibration.@Nullable Measured curve,
    String noCurve,
    List<CurveReading> loose,
    StandardsTyped standards,
    List<String> questions) {
  StageFilled {
    serials = Map.copyOf(serials);
    loose = List.copyOf(loose);
    questions = List.copyOf(questions);
  }

  boolean hasResult() {
    return curve != null || !noCurve.isEmpty();
  }

  /** What came out of it; only where there is a result. */
  NewCalibration.Outcome outcome() {
    return curve == null ? new NewCalibration.NoCurve(noCurve, loose) : curve;
  }

  /**
   * What a file is read with.
   *
   * @param zone clock of the site
   * @param profile that judges the loop's curves; null where none is known
   * @param standards in the register
   */
  record With(
      ZoneId zone,
      Instant now,
      ToleranceProfiles.@Nullable Stored profile,
      List<Standard> standards) {
    With {
      standards = List.copyOf(standards);
    }
  }

  /** Reads one stage of a loop; everything wrong is complained of at its cell. */
  static StageFilled read(FilledLoop loop, Column up, Column down, With with) {
    Map<String, String> serials = new LinkedHashMap<>();
    for (LoopSheet.Fitted part : loop.sheet().chain()) {
      String serial = loop.text(Item.SERIAL, part.slot(), up);
      if (!serial.isEmpty()) {
        serials.put(part.slot(), serial);
      }
    }
    Optional<Instant> at = loop.moment(Item.MEASURED_AT, "", up, with.zone());
    String by = loop.text(Item.DONE_BY, "", up);
    String zero = loop.text(Item.ZERO, "", up);
    String gapVolts = loop.number(Item.GAP_VOLTAGE, "", up);
    String noCurve = loop.text(Item.NO_CURVE, "", up);
    List<String> questions = new ArrayList<>();
    ToleranceProfiles.Stored profile = with.profile();
    NewCalibration.Measured curve =
        profile == null || !noCurve.isEmpty() ? null : curve(loop, up, down, profile, questions);
    List<CurveReading> loose = noCurve.isEmpty() ? List.of() : loose(loop, up, down);
    StandardsTyped standards =
        StandardsTyped.read(
            loop, up, at.map(m -> SiteMoment.day(m, with.zone())), with.standards());
    questions.addAll(standards.questions(curve == null ? loose : curve.curve().readings()));
    StageFilled stage =
        new StageFilled(
            at.orElse(null),
            by,
            Zero.named(zero).orElse(Zero.NOT_RECORDED),
            serials,
            gapVolts,
            curve,
            noCurve,
            loose,
            standards,
            questions);
    stage.complainOfMissing(loop, up);
    return stage;
  }

  /** Where there was no curve to take, whatever was read is kept beside the reason. */
  private static List<CurveReading> loose(FilledLoop loop, Column up, Column down) {
    List<CurveEntry.Cells> cells = loop.readings(up, down);
    if (cells.isEmpty()) {
      return List.of();
    }
    CurveCheck.Alone alone = CurveCheck.alone(entry(loop, cells));
    complain(loop, up, down, alone.complaints());
    return alone.readings();
  }

  private static CurveEntry entry(FilledLoop loop, List<CurveEntry.Cells> cells) {
    Unit unit = Unit.named(Objects.requireNonNull(loop.sheet().limits()).unit()).orElseThrow();
    return new CurveEntry(unit, Unit.VOLT, SignConvention.NEGATIVE, cells);
  }

  private static void complain(FilledLoop loop, Column up, Column down, List<Remark> remarks) {
    for (Remark remark : remarks) {
      Column column = remark.column() == Remark.Column.DOWN_VOLTS ? down : up;
      FilledLoop.Place place =
          remark.row() == 0
              ? loop.place(Item.OUTCOME, "", column)
              : new FilledLoop.Place(remark.row(), column);
      loop.complain(place, PackProblem.READING, remark.sentence());
    }
  }

  private static NewCalibration.@Nullable Measured curve(
      FilledLoop loop,
      Column up,
      Column down,
      ToleranceProfiles.Stored profile,
      List<String> questions) {
    List<CurveEntry.Cells> cells = loop.readings(up, down);
    if (cells.isEmpty()) {
      return null;
    }
    CurveCheck check = CurveCheck.toKeep(entry(loop, cells), profile.profile());
    complain(loop, up, down, check.complaints());
    check.questions().forEach(question -> questions.add(question.sentenceWithRow()));
    return check
        .curve()
        .map(curve -> new NewCalibration.Measured(curve, profile.version(), profile.profile()))
        .orElse(null);
  }

  /** A result without its moment or its maker is no record. */
  private void complainOfMissing(FilledLoop loop, Column up) {
    String stage = up.heading();
    if (!hasResult() && !standards.typed().isEmpty()) {
      loop.complain(
          loop.place(Item.STANDARDS, "", up),
          PackProblem.STANDARDS_OF_NOTHING,
          loop.sheet().tag(),
          stage);
    }
    boolean anything = hasResult() || !gapVolts.isEmpty() || !serials.isEmpty();
    if (anything && at == null) {
      loop.complain(
          loop.place(Item.MEASURED_AT, "", up), PackProblem.NO_MOMENT, loop.sheet().tag(), stage);
    }
    if ((hasResult() || !gapVolts.isEmpty()) && by.isEmpty()) {
      loop.complain(
          loop.place(Item.DONE_BY, "", up), PackProblem.NO_NAME, loop.sheet().tag(), stage);
    }
  }
}
