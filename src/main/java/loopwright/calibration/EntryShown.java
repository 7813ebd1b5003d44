package loopwright.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What the page for typing a curve shows around the form's own fields.
 *
 * @param setup of the parts that are measured
 * @param href of the page
 * @param judgedHref where readings are judged while one types
 * @param loopHref back to the loop, or to where sets are chosen
 * @param parts measured, in words
 * @param combinationKnown whether a curve could be kept against them
 * @param profiles to choose from: code and name
 * @param standards to choose from: equipment it may have been made with
 * @param holdsReadings whether a file would have to replace something
 * @param draftSaved when the draft shown was put aside; null if none is shown
 */
record EntryShown(
    String tag,
    Setup setup,
    String href,
    String judgedHref,
    String loopHref,
    String zone,
    String parts,
    boolean combinationKnown,
    Map<String, String> profiles,
    List<ChosenStandards.Choice> standards,
    List<Row> rows,
    List<String> questions,
    boolean holdsReadings,
    @Nullable String draftSaved) {

  /** A row and what is wrong with it. */
  record Row(int number, String gap, String up, String down, String complaint) {}

  static List<Row> rows(TypedCurve typed) {
    List<Row> rows = new ArrayList<>();
    for (CurveForm.TypedRow row : typed.rows()) {
      int number = rows.size() + 1;
      rows.add(new Row(number, row.gap(), row.up(), row.down(), typed.complaint(number)));
    }
    return rows;
  }

  public boolean isBench() {
    return setup == Setup.BENCH;
  }

  public boolean isStoodIn() {
    return setup == Setup.STOOD_IN;
  }

  /** In which one part can stand in for another. */
  public Map<String, String> slots() {
    Map<String, String> slots = new LinkedHashMap<>();
    slots.put("path-1", "extension cable (path 1)");
    slots.put("path-2", "path 2");
    slots.put("path-3", "path 3");
    slots.put("driver", "driver");
    slots.put("probe", "probe");
    return slots;
  }

  public Map<String, String> gapUnits() {
    return symbols(CurveForm.GAP_UNITS);
  }

  public List<String> temperatureUnits() {
    return CurveForm.TEMPERATURE_UNITS.stream().map(Unit::symbol).toList();
  }

  public List<String> runOutUnits() {
    return CurveForm.GAP_UNITS.stream().map(Unit::symbol).toList();
  }

  public Map<String, String> voltsUnits() {
    return symbols(CurveForm.VOLTS_UNITS);
  }

  private static Map<String, String> symbols(List<Unit> units) {
    Map<String, String> symbols = new LinkedHashMap<>();
    units.forEach(unit -> symbols.put(unit.symbol(), unit.symbol()));
    return symbols;
  }

  public Map<String, String> signs() {
    Map<String, String> signs = new LinkedHashMap<>();
    signs.put("negative", "with its minus");
    signs.put("magnitude", "without its minus");
    return signs;
  }

  public Map<String, String> stages() {
    Map<String, String> stages = new LinkedHashMap<>();
    for (Stage stage : Stage.values()) {
      stages.put(stage.word(), stage.word());
    }
    stages.put(Stage.NOTHING_TOUCHED.word(), "nothing touched: the as found stands as the as left");
    return stages;
  }

  public Map<String, String> zeros() {
    Map<String, String> zeros = new LinkedHashMap<>();
    for (Zero zero : Zero.values()) {
      zeros.put(zero.word(), zero.word());
    }
    return zeros;
  }
}
