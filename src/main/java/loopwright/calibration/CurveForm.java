package loopwright.calibration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.Remark;
import loopwright.curve.Run;
import loopwright.curve.SignConvention;
import loopwright.curve.ToleranceProfile;
import loopwright.time.SiteMoment;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the page on which a curve is typed: a row a gap, the up and the down run side by side. */
final class CurveForm {
  static final int ROWS = 11;

  private final Form form;

  CurveForm(Form form) {
    this.form = form;
  }

  Unit gapUnit() {
    return unit("gap-unit", Unit.MICROMETRE);
  }

  Unit voltsUnit() {
    return unit("volts-unit", Unit.VOLT);
  }

  private Unit unit(String field, Unit otherwise) {
    return Unit.named(form.typed(field))
        .filter(unit -> unit.dimension() == otherwise.dimension())
        .orElse(otherwise);
  }

  SignConvention sign() {
    return form.typed("sign").equals("magnitude")
        ? SignConvention.MAGNITUDE
        : SignConvention.NEGATIVE;
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
    List<TypedRow> rows = new ArrayList<>();
    for (int i = 0; i < Math.max(ROWS, gaps.size()); i++) {
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

  /** The readings as cells; a row without any voltage is a gap nobody went to. */
  CurveEntry entry() {
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
    return new CurveEntry(gapUnit(), voltsUnit(), sign(), cells);
  }

  CurveCheck check(ToleranceProfile profile) {
    return CurveCheck.of(entry(), profile);
  }

  Stage stage() {
    return form.read(
        "stage",
        word ->
            Stage.named(word)
                .orElseThrow(() -> new IllegalArgumentException("Choose as found or as left.")));
  }

  Zero zero() {
    return Zero.named(form.typed("zero")).orElse(Zero.NOT_RECORDED);
  }

  boolean noCurve() {
    return form.chosen("no-curve", "yes");
  }

  /** The moment of measuring, on the site's clock. */
  Optional<Instant> measuredAt(ZoneId zone) {
    LocalDate day = form.read("on", SiteMoment::day);
    LocalTime time = form.read("time", SiteMoment::time);
    if (form.complaint("on") != null || form.complaint("time") != null) {
      return Optional.empty();
    }
    return Optional.ofNullable(form.read("time", typed -> SiteMoment.of(day, time, zone)))
        .filter(moment -> form.complaint("time") == null);
  }
}
