package loopwright.calibration;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.curve.CurveEntry;
import loopwright.curve.Remark;
import loopwright.curve.Run;
import loopwright.curve.SignConvention;
import loopwright.loop.TypedMoment;
import loopwright.problem.Text;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the page on which a curve is typed: a row a gap, the up and the down run side by side. */
final class CurveForm {
  static final int ROWS = 11;
  static final List<Unit> GAP_UNITS = List.of(Unit.MICROMETRE, Unit.MIL);
  static final List<Unit> VOLTS_UNITS = List.of(Unit.VOLT, Unit.MILLIVOLT);
  static final List<Unit> TEMPERATURE_UNITS = List.of(Unit.CELSIUS, Unit.FAHRENHEIT);
  private static final int PROCEDURE_CHARACTERS = 120;
  private static final double COLDEST = -200;
  private static final double HOTTEST = 500;
  private static final double MOST_RUN_OUT = 500;
  private static final int ALLOY_CHARACTERS = 60;
  private static final int NAME_CHARACTERS = 120;
  private static final int NO_CURVE_CHARACTERS = 400;

  private final Form form;

  CurveForm(Form form) {
    this.form = form;
  }

  /** A row as typed. */
  record TypedRow(String gap, String up, String down) {
    boolean isBlank() {
      return up.isBlank() && down.isBlank();
    }
  }

  /** All rows as typed, filled up with empty ones. */
  List<TypedRow> rows() {
    List<String> gaps = form.every("gap");
    List<String> ups = form.every("up");
    List<String> downs = form.every("down");
    int typed = Math.max(gaps.size(), Math.max(ups.size(), downs.size()));
    List<TypedRow> rows = new ArrayList<>();
    for (int i = 0; i < Math.max(ROWS, typed); i++) {
      rows.add(new TypedRow(at(gaps, i), at(ups, i), at(downs, i)));
    }
    return rows;
  }

  private static String at(List<String> cells, int i) {
    return i < cells.size() ? cells.get(i).strip() : "";
  }

  boolean anythingTyped() {
    return rows().stream().anyMatch(row -> !row.isBlank());
  }

  /** Unit and sign as chosen, without any reading; empty, and told at its field, if one is none. */
  Optional<CurveEntry> scales() {
    Optional<Unit> gap = unit("gap-unit", GAP_UNITS);
    Optional<Unit> volts = unit("volts-unit", VOLTS_UNITS);
    Optional<SignConvention> sign = sign();
    return gap.isEmpty() || volts.isEmpty() || sign.isEmpty()
        ? Optional.empty()
        : Optional.of(new CurveEntry(gap.get(), volts.get(), sign.get(), List.of()));
  }

  private Optional<Unit> unit(String field, List<Unit> choices) {
    return Optional.ofNullable(form.unit(field, choices));
  }

  private Optional<SignConvention> sign() {
    Optional<SignConvention> sign =
        Arrays.stream(SignConvention.values())
            .filter(each -> each.label().equals(form.typed("sign")))
            .findFirst();
    if (sign.isEmpty()) {
      form.complain("sign", "Say whether outputs are typed with or without their minus.");
    }
    return sign;
  }

  /**
   * The readings as cells; a row without any voltage is a gap nobody went to. Empty when unit or
   * sign is none.
   */
  Optional<CurveEntry> entry() {
    List<CurveEntry.Cells> cells = new ArrayList<>();
    List<TypedRow> rows = rows();
    for (int i = 0; i < rows.size(); i++) {
      TypedRow row = rows.get(i);
      if (!row.up().isEmpty()) {
        cells.add(new CurveEntry.Cells(i + 1, row.gap(), row.up(), Run.UP.label()));
      }
      if (!row.down().isEmpty()) {
        cells.add(
            new CurveEntry.Cells(
                i + 1, row.gap(), row.down(), Run.DOWN.label(), Remark.Column.DOWN_VOLTS));
      }
    }
    return scales().map(as -> new CurveEntry(as.gapUnit(), as.voltsUnit(), as.sign(), cells));
  }

  Stage stage() {
    return form.read(
        "stage",
        word ->
            Stage.named(word)
                .orElseThrow(() -> new IllegalArgumentException("Choose as found or as left.")));
  }

  Zero zero() {
    return form.read(
        "zero",
        word ->
            Zero.named(word)
                .orElseThrow(
                    () -> new IllegalArgumentException("Choose where gap zero was taken.")));
  }

  String performedBy() {
    return form.text("performed-by", NAME_CHARACTERS);
  }

  String alloy() {
    return form.read("alloy", typed -> Text.kept("the target alloy", typed, ALLOY_CHARACTERS));
  }

  Conditions conditions() {
    Optional<Reported> temperature =
        measured("temperature", TEMPERATURE_UNITS)
            .filter(
                t ->
                    within(
                        "temperature",
                        t.canonical() >= COLDEST && t.canonical() <= HOTTEST,
                        "A temperature at a probe lies between −200 and 500 °C."));
    Optional<Reported> runOut =
        measured("run-out", GAP_UNITS)
            .filter(
                r ->
                    within(
                        "run-out",
                        r.canonical() >= 0 && r.canonical() <= MOST_RUN_OUT,
                        "A target's run-out lies between 0 and 500 µm, peak to peak."));
    String procedure =
        form.read("procedure", typed -> Text.kept("the procedure", typed, PROCEDURE_CHARACTERS));
    return new Conditions(temperature, runOut, procedure == null ? "" : procedure);
  }

  private Optional<Reported> measured(String field, List<Unit> choices) {
    return form.typed(field).isBlank()
        ? Optional.empty()
        : Optional.ofNullable(form.measured(field, choices.toArray(Unit[]::new)));
  }

  private boolean within(String field, boolean holds, String otherwise) {
    if (!holds) {
      form.complain(field, otherwise);
    }
    return holds;
  }

  boolean noCurve() {
    return form.chosen("no-curve", "yes");
  }

  String noCurveReason() {
    return form.text("no-curve-reason", NO_CURVE_CHARACTERS);
  }

  boolean confirmed() {
    return form.chosen("confirmed", "yes");
  }

  /** The moment of measuring, on the site's clock. */
  Optional<Instant> measuredAt(ZoneId zone, Instant now) {
    return TypedMoment.read(form, zone, now);
  }
}
