package loopwright.importing;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.sheet.Table;

/**
 * What a file holds, in the order in which kinds build on one another. A file is known by its
 * headings; the columns are described for users in {@code src/docs/import-files.md}.
 */
public enum FileKind {
  FAMILIES(
      "family",
      "name maker scale_factor_mv_um# scale_factor_mv_mil# linear_range_from_um"
          + " linear_range_from_mil linear_range_to_um linear_range_to_mil start_volts# tip_mm#"
          + " probe_lengths_m probe_lengths_ft cable_lengths_m cable_lengths_ft system_lengths_m"
          + " system_lengths_ft length_tolerance_m length_tolerance_ft cable_use two_cables_allowed"
          + " connectors target_alloy output profile interchangeable_with interchangeable_said_by"
          + " note"),
  COMPONENTS(
      "kind maker model",
      "serial shop_number family length_m# length_ft# length_evidence physical_length_m#"
          + " physical_length_ft# tip_mm# scale_factor_mv_um# scale_factor_mv_mil# channels#"
          + " sensitivity condition condition_reason store bin due_on since note"),
  POINTS(
      "site train machine tag kind",
      "site_name site_zone train_name machine_name machine_place# place family pair angle_deg#"
          + " viewing_end rotation ramp_deg# mark events_per_turn# threshold_v# shaft_alloy"
          + " area_class junction_box tip_temp_c# route_temp_c# box_temp_c# approved_gap_um#"
          + " approved_gap_mil# interval_months# state rack rack_slot# rack_channel# settings_from"
          + " scale_factor_mv_um# scale_factor_mv_mil# scale_factor_reason full_scale_low#"
          + " full_scale_high# alert_low# alert_high# danger_low# danger_high# level_unit"
          + " alert_delay_s# danger_delay_s# ok_low_v# ok_high_v# zero_v# positive_direction"
          + " authority phase_reference voting_group voting_logic"),
  PLACEMENTS("tag slot from", "until content maker model serial shop_number driver_channel# note"),
  CALIBRATIONS(
      "tag stage measured_at performed_by",
      "profile profile_version# zero target_alloy standards run gap_um# gap_mil# volts# millivolts# no_curve_reason");

  private static final String NUMERIC = "#";

  private final List<String> needed;
  private final List<String> others;
  private final List<String> numeric;

  /**
   * @param others headings that may follow, in the order they are told; a hash marks those that
   *     hold one number a cell
   */
  FileKind(String needed, String others) {
    this.needed = List.of(needed.split(" "));
    this.others =
        Arrays.stream(others.split(" ")).map(heading -> heading.replace(NUMERIC, "")).toList();
    this.numeric =
        Arrays.stream(others.split(" "))
            .filter(heading -> heading.endsWith(NUMERIC))
            .map(heading -> heading.replace(NUMERIC, ""))
            .toList();
  }

  /** {@code components}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Without these nothing can be read. */
  List<String> needed() {
    return needed;
  }

  /** Columns that hold one number a cell. */
  List<String> numeric() {
    return numeric;
  }

  /** Those that may follow, in the order they are told. */
  List<String> others() {
    return others;
  }

  List<String> known() {
    return Stream.concat(needed.stream(), others.stream()).toList();
  }

  /**
   * The kind that knows most of the headings, and at least half of them; empty when two kinds know
   * as many.
   */
  static Optional<FileKind> of(Table table) {
    List<FileKind> best =
        Arrays.stream(values())
            .sorted(Comparator.comparingLong((FileKind kind) -> kind.score(table)).reversed())
            .toList();
    boolean clear =
        best.get(0).score(table) > best.get(1).score(table)
            && 2 * best.get(0).knows(table) >= table.headings().size();
    return clear ? Optional.of(best.get(0)) : Optional.empty();
  }

  private long knows(Table table) {
    return known().stream().filter(table::has).count();
  }

  /** Between two that know as many headings the one counts that has all it needs. */
  private long score(Table table) {
    return 2 * knows(table) + (needed.stream().allMatch(table::has) ? 1 : 0);
  }
}
