package loopwright.importing;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.sheet.Table;

/**
 * What a file holds, in the order in which kinds build on one another. A file is known by its
 * headings; the columns are described for users in {@code src/docs/import-files.md}.
 */
public enum FileKind {
  FAMILIES(
      List.of("family"),
      Set.of("scale_factor_mv_um", "scale_factor_mv_mil", "start_volts", "tip_mm"),
      List.of(
          "name",
          "maker",
          "linear_range_from_um",
          "linear_range_from_mil",
          "linear_range_to_um",
          "linear_range_to_mil",
          "probe_lengths_m",
          "probe_lengths_ft",
          "cable_lengths_m",
          "cable_lengths_ft",
          "system_lengths_m",
          "system_lengths_ft",
          "length_tolerance_m",
          "length_tolerance_ft",
          "cable_use",
          "two_cables_allowed",
          "connectors",
          "target_alloy",
          "output",
          "profile",
          "interchangeable_with",
          "interchangeable_said_by",
          "note")),
  COMPONENTS(
      List.of("kind", "maker", "model"),
      Set.of(
          "length_m",
          "length_ft",
          "physical_length_m",
          "physical_length_ft",
          "tip_mm",
          "scale_factor_mv_um",
          "scale_factor_mv_mil",
          "channels"),
      List.of(
          "serial",
          "shop_number",
          "family",
          "length_evidence",
          "sensitivity",
          "condition",
          "condition_reason",
          "store",
          "bin",
          "due_on",
          "since",
          "note")),
  POINTS(
      List.of("site", "train", "machine", "tag", "kind"),
      Set.of(
          "machine_place",
          "angle_deg",
          "ramp_deg",
          "events_per_turn",
          "threshold_v",
          "tip_temp_c",
          "route_temp_c",
          "box_temp_c",
          "approved_gap_um",
          "approved_gap_mil",
          "interval_months",
          "rack_slot",
          "rack_channel",
          "scale_factor_mv_um",
          "scale_factor_mv_mil",
          "full_scale_low",
          "full_scale_high",
          "alert_low",
          "alert_high",
          "danger_low",
          "danger_high",
          "alert_delay_s",
          "danger_delay_s",
          "ok_low_v",
          "ok_high_v",
          "zero_v"),
      List.of(
          "site_name",
          "site_zone",
          "train_name",
          "machine_name",
          "place",
          "family",
          "pair",
          "viewing_end",
          "rotation",
          "mark",
          "shaft_alloy",
          "area_class",
          "junction_box",
          "state",
          "rack",
          "settings_from",
          "scale_factor_reason",
          "level_unit",
          "positive_direction",
          "authority",
          "phase_reference",
          "voting_group",
          "voting_logic")),
  PLACEMENTS(
      List.of("tag", "slot", "from"),
      Set.of("driver_channel"),
      List.of("content", "maker", "model", "serial", "shop_number", "until", "note")),
  CALIBRATIONS(
      List.of("tag", "stage", "measured_at", "performed_by"),
      Set.of("gap_um", "gap_mil", "volts", "millivolts"),
      List.of("profile", "zero", "target_alloy", "run", "no_curve_reason"));

  private final List<String> needed;
  private final Set<String> numeric;
  private final List<String> others;

  FileKind(List<String> needed, Set<String> numeric, List<String> others) {
    this.needed = needed;
    this.numeric = numeric;
    this.others = others;
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
  Set<String> numeric() {
    return numeric;
  }

  List<String> known() {
    return Stream.of(needed, numeric, others).flatMap(headings -> headings.stream()).toList();
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
