package loopwright.registerfile;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loopwright.matching.PartKind;
import loopwright.sheet.UnitColumn;

/**
 * The columns that tell of one slot.
 *
 * @param name what the headings begin with: {@code probe}, {@code cable}, {@code cable2} or {@code
 *     driver}
 * @param length nominal length; for the driver the system length
 * @param evidence heading of how that length is known
 * @param measured physical length; none for the driver
 * @param tip heading of the tip size; empty where the kind has none
 * @param scaleFactor none for cables
 */
record PartColumns(
    PartKind kind,
    String name,
    UnitColumn length,
    String evidence,
    List<UnitColumn> measured,
    String tip,
    List<UnitColumn> scaleFactor) {
  static final PartColumns PROBE =
      new PartColumns(
          PartKind.PROBE,
          "probe",
          UnitColumn.length("probe_length"),
          "probe_length_evidence",
          List.of(UnitColumn.length("probe_measured_length")),
          "probe_tip_mm",
          List.of(UnitColumn.scaleFactor("probe_scale_factor")));
  static final PartColumns CABLE = cable("cable");
  static final PartColumns SECOND_CABLE = cable("cable2");
  static final PartColumns DRIVER =
      new PartColumns(
          PartKind.DRIVER,
          "driver",
          UnitColumn.length("system_length"),
          "system_length_evidence",
          List.of(),
          "driver_tip_mm",
          List.of(UnitColumn.scaleFactor("driver_scale_factor")));
  static final List<PartColumns> ALL = List.of(PROBE, CABLE, SECOND_CABLE, DRIVER);

  private static PartColumns cable(String name) {
    return new PartColumns(
        PartKind.CABLE,
        name,
        UnitColumn.length(name + "_length"),
        name + "_length_evidence",
        List.of(UnitColumn.length(name + "_measured_length")),
        "",
        List.of());
  }

  String serial() {
    return name + "_serial";
  }

  String maker() {
    return name + "_maker";
  }

  String family() {
    return name + "_family";
  }

  /** Quantities whose headings name the unit. */
  List<UnitColumn> unitColumns() {
    return Stream.of(List.of(length), measured, scaleFactor).flatMap(List::stream).toList();
  }

  /** Every heading that tells of this slot. */
  List<String> headings() {
    List<String> headings = new ArrayList<>(List.of(serial(), maker(), family(), evidence));
    unitColumns().forEach(column -> headings.addAll(column.headings()));
    if (!tip.isEmpty()) {
      headings.add(tip);
    }
    return headings;
  }
}
