package loopwright.importing;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.calibration.Calibrated;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Stage;
import loopwright.calibration.Zero;
import loopwright.curve.Curve;
import loopwright.loop.Content;
import loopwright.loop.Slot;
import loopwright.problem.Text;
import loopwright.register.ToleranceProfiles;
import loopwright.time.SiteMoment;

/**
 * Rows of a calibrations file, one a reading; rows of one tag, stage and moment are one
 * calibration. It belongs to the parts fitted at that moment, as they are recorded or as the same
 * import records them. Calibrations are never changed by a file.
 */
final class CalibrationRows {
  private static final int ALL = 100_000;

  private final Planning planning;
  private final ProfileCells profiles;
  private final StandardCells standards;
  private final Map<Curve, String> questions = new IdentityHashMap<>();
  private final List<NewOne> fresh = new ArrayList<>();
  private final Map<Long, List<Calibrated>> recorded = new HashMap<>();

  CalibrationRows(Planning planning) {
    this.planning = planning;
    this.profiles = new ProfileCells(planning);
    this.standards = new StandardCells(planning);
  }

  /** Tag, stage and moment: what makes rows one calibration. */
  private record Key(long point, Stage stage, Instant at) {}

  /** What the first row of a calibration says of all of it. */
  private record Head(
      RowCells row,
      Tags.Tagged point,
      Stage stage,
      Instant at,
      String performedBy,
      Zero zero,
      String alloy,
      List<Long> certificates) {
    Key key() {
      return new Key(point.number(), stage, at);
    }

    String what() {
      return point.tag() + " " + stage.word() + " " + row.text("measured_at");
    }
  }

  private record Taken(Head head, List<RowCells> rows) {}

  private record NewOne(Head head, NewCalibration.Outcome outcome) {}

  void plan(List<Sheet> sheets) {
    for (Sheet sheet : sheets) {
      Map<Key, Taken> taken = new LinkedHashMap<>();
      for (RowCells row : sheet.rows(planning.complaints)) {
        Optional<Head> head = head(row);
        if (head.isEmpty() || !row.isGood()) {
          planning.refused(row, row.name("tag"));
        } else {
          Taken one =
              taken.computeIfAbsent(
                  head.get().key(), k -> new Taken(head.get(), new ArrayList<>()));
          agrees(row, head.get(), one.head());
          one.rows().add(row);
        }
      }
      load(taken.keySet());
      taken.values().forEach(this::decide);
    }
    write();
  }

  private Optional<Head> head(RowCells row) {
    Optional<Tags.Tagged> point = planning.tags.named(row, "tag");
    if (!row.isFilled("stage")) {
      row.complain("stage", ImportProblem.EMPTY_CELL, "the stage: as found, as left, or both");
    }
    Optional<Stage> stage = row.choice("stage", Arrays.asList(Stage.values()), Stage::word);
    if (!row.isFilled("measured_at")) {
      row.complain("measured_at", ImportProblem.EMPTY_CELL, "the day or moment it was taken");
    }
    Optional<Instant> at =
        row.past("measured_at", point.map(Tags.Tagged::zone).orElse(ZoneOffset.UTC), planning.now);
    Optional<Zero> zero = row.choice("zero", Arrays.asList(Zero.values()), Zero::word);
    Optional<String> by = text(row, "performed_by", "who took it", 120, true);
    Optional<String> alloy = text(row, "target_alloy", "the target alloy", 60, false);
    return point.isEmpty() || stage.isEmpty() || at.isEmpty() || by.isEmpty() || alloy.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Head(
                row,
                point.get(),
                stage.get(),
                at.get(),
                by.get(),
                zero.orElse(Zero.NOT_RECORDED),
                alloy.get(),
                standards.of(row, SiteMoment.day(at.get(), point.get().zone()))));
  }

  private static Optional<String> text(
      RowCells row, String heading, String what, int most, boolean needed) {
    String text = row.text(heading);
    return row.attempt(
        heading, () -> needed ? Text.needed(what, text, most) : Text.kept(what, text, most));
  }

  private static void agrees(RowCells row, Head head, Head first) {
    agree(row, "performed_by", head.performedBy, first.performedBy, first);
    agree(row, "zero", head.zero.word(), first.zero.word(), first);
    agree(row, "target_alloy", head.alloy, first.alloy, first);
    agree(row, StandardCells.HEADING, named(head), named(first), first);
    for (String heading : new String[] {ProfileCells.HEADING, ProfileCells.VERSION}) {
      agree(row, heading, row.text(heading), first.row.text(heading), first);
    }
  }

  private static String named(Head head) {
    return head.row.text(StandardCells.HEADING);
  }

  private static void agree(RowCells row, String heading, String one, String other, Head first) {
    if (!one.equals(other)) {
      row.complain(heading, ImportProblem.DISAGREES, one, other, first.row.place());
    }
  }

  private void load(Set<Key> keys) {
    Set<Long> points = new HashSet<>();
    keys.forEach(key -> points.add(key.point()));
    planning.fitted.load(points, List.of());
  }

  private void decide(Taken taken) {
    if (known(taken.head()).isEmpty() && !isFittedKnown(taken.head())) {
      taken.head().row().complain("tag", ImportProblem.NO_COMBINATION, taken.head().point().tag());
    }
    Optional<NewCalibration.Outcome> outcome =
        taken.head().row().isGood() || taken.head().row().isFilled("profile")
            ? outcome(taken)
            : Optional.empty();
    boolean good = outcome.isPresent() && taken.rows().stream().allMatch(RowCells::isGood);
    if (!good) {
      give(taken, Fate.REFUSED);
      return;
    }
    Optional<Calibrated> known = known(taken.head());
    if (known.isPresent()) {
      give(taken, sameAgain(taken, known.get(), outcome.get()) ? Fate.UNCHANGED : Fate.REFUSED);
      return;
    }
    fresh.add(new NewOne(taken.head(), outcome.get()));
    give(taken, Fate.ADDED);
    RowPlace first = taken.head().row().place();
    planning.fate(RowFate.of(first, Fate.ADDED, taken.head().what()).noting(note(outcome.get())));
  }

  /** Imported, unsigned; by which version it is judged, and what would be asked back. */
  private String note(NewCalibration.Outcome outcome) {
    String judged =
        outcome instanceof NewCalibration.Measured measured
            ? "judged by %s, version %s"
                .formatted(measured.profile().code(), measured.profile().version())
            : "no curve";
    String asked = asked(outcome);
    return "Imported, unsigned; " + judged + "." + (asked.isEmpty() ? "" : " " + asked);
  }

  /** What a person who types the curve would be asked back; here the plan says it. */
  private String asked(NewCalibration.Outcome outcome) {
    return outcome instanceof NewCalibration.Measured measured
        ? questions.getOrDefault(measured.curve(), "")
        : "";
  }

  private void give(Taken taken, Fate fate) {
    taken.rows().forEach(row -> planning.fate(RowFate.of(row.place(), fate, taken.head().what())));
  }

  private Optional<NewCalibration.Outcome> outcome(Taken taken) {
    List<RowCells> withReadings =
        taken.rows().stream().filter(row -> row.anyFilled(ReadingCells.HEADINGS)).toList();
    String reason =
        taken.rows().stream()
            .map(row -> row.text("no_curve_reason"))
            .filter(text -> !text.isEmpty())
            .findFirst()
            .orElse("");
    RowCells first = taken.head().row();
    if (!reason.isEmpty() && !withReadings.isEmpty()) {
      first.complain("no_curve_reason", ImportProblem.CURVE_AND_NONE);
      return Optional.empty();
    }
    if (!reason.isEmpty()) {
      return text(first, "no_curve_reason", "why there is no curve", 400, true)
          .map(NewCalibration.NoCurve::new);
    }
    Optional<ToleranceProfiles.Stored> profile =
        profiles.of(first, driver(taken.head()), taken.head().at());
    Optional<Curve> curve =
        profile.flatMap(p -> ReadingCells.curve(taken.rows(), p.profile(), questions));
    return curve.map(
        c -> new NewCalibration.Measured(c, profile.get().version(), profile.get().profile()));
  }

  private Optional<Long> driver(Head head) {
    return planning
        .fitted
        .lines()
        .at(head.point.number(), Slot.DRIVER, head.at)
        .flatMap(stay -> stay.content().component().stream().boxed().findFirst());
  }

  private Optional<Calibrated> known(Head head) {
    long point = head.point.number();
    if (point < 0) {
      return Optional.empty();
    }
    return recorded
        .computeIfAbsent(
            point,
            p -> planning.features.calibrations().ofLoop(planning.sql, p, Optional.empty(), ALL))
        .stream()
        .filter(c -> c.stage() == head.stage && c.measuredAt().equals(head.at))
        .findFirst();
  }

  private boolean sameAgain(Taken taken, Calibrated known, NewCalibration.Outcome outcome) {
    boolean same;
    if (outcome instanceof NewCalibration.Measured measured) {
      Optional<Curve> curve = planning.features.calibrations().curve(planning.sql, known);
      same = curve.filter(c -> ReadingCells.same(c, measured.curve())).isPresent();
    } else {
      same = !known.hasCurve();
    }
    if (!same) {
      taken
          .head()
          .row()
          .complainOfRow(ImportProblem.OTHER_CALIBRATION, taken.head().what(), known.number());
    }
    return same;
  }

  /** Probe and driver are known and no slot between them is unknown. */
  private boolean isFittedKnown(Head head) {
    Timelines lines = planning.fitted.lines();
    for (Slot slot : Slot.values()) {
      Optional<Content> content = lines.at(head.point.number(), slot, head.at).map(Stay::content);
      boolean needed = slot == Slot.PROBE || slot == Slot.DRIVER;
      if (needed && content.filter(c -> c instanceof Content.Part).isEmpty()) {
        return false;
      }
      if (content.filter(c -> c instanceof Content.Unknown).isPresent()) {
        return false;
      }
    }
    return true;
  }

  private void write() {
    if (fresh.isEmpty()) {
      return;
    }
    List<NewOne> all = List.copyOf(fresh);
    planning.steps.add(
        (tx, ids) ->
            planning
                .features
                .calibrations()
                .keepAll(tx, all.stream().map(one -> real(one, ids)).toList()));
  }

  private static NewCalibration real(NewOne one, Ids ids) {
    Head head = one.head;
    return new NewCalibration(
        ids.real(head.point.number()),
        head.stage,
        head.at,
        head.performedBy,
        head.zero,
        head.alloy,
        one.outcome,
        "imported",
        head.certificates);
  }
}
