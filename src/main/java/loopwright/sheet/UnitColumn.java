package loopwright.sheet;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.units.Unit;

/** A quantity whose heading names the unit: {@code cable_length_m} or {@code cable_length_ft}. */
public final class UnitColumn {
  private final Map<Unit, String> headings = new LinkedHashMap<>();

  /**
   * @param stem the heading without its unit
   * @param units in which it may be given, the commonest first
   */
  private UnitColumn(String stem, Unit... units) {
    for (Unit unit : units) {
      String suffix = unit.symbol().toLowerCase(Locale.ROOT).replace('µ', 'u').replace('/', '_');
      headings.put(unit, stem + "_" + suffix);
    }
  }

  public static UnitColumn length(String stem) {
    return new UnitColumn(stem, Unit.METRE, Unit.FOOT);
  }

  public static UnitColumn gap(String stem) {
    return new UnitColumn(stem, Unit.MICROMETRE, Unit.MIL);
  }

  public static UnitColumn scaleFactor(String stem) {
    return new UnitColumn(stem, Unit.MILLIVOLT_PER_MICROMETRE, Unit.MILLIVOLT_PER_MIL);
  }

  /** The commonest first. */
  public List<String> headings() {
    return List.copyOf(headings.values());
  }

  /**
   * {@code cable_length_m}, {@code scale_factor_mv_um}.
   *
   * @param unit one of this column's
   */
  public String heading(Unit unit) {
    return Objects.requireNonNull(headings.get(unit));
  }

  /** The heading under which the table gives it, else the commonest. */
  public String headingIn(Table table) {
    return unitIn(table).map(this::heading).orElse(headings().get(0));
  }

  /** The unit in which the table gives it; empty when it has no such column. */
  public Optional<Unit> unitIn(Table table) {
    return headings.keySet().stream().filter(unit -> table.has(heading(unit))).findFirst();
  }

  /** Complains when the table gives it in two units. */
  public void refuseTwoUnits(Table table, Complaints complaints) {
    List<String> given = headings.values().stream().filter(table::has).toList();
    if (given.size() > 1) {
      complaints.add(
          SheetProblem.TWO_UNITS, table.name(), table.headingLine(), given.get(0), given.get(1));
    }
  }
}
