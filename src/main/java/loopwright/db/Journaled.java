package loopwright.db;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.gen.DefaultSchema;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.UniqueKey;

/**
 * A table whose every row the journal accounts for.
 *
 * @param name lower case
 * @param key the number that names a row, or in a grouped table the parent of a group
 * @param grouped whether the rows of one parent are journaled as one fact
 * @param insertOnly whether a row once written may never change or go
 */
public record Journaled(
    String name, Table<?> table, Field<Long> key, boolean grouped, boolean insertOnly) {

  /** The tables that verification compares with the journal, in the order in which it does. */
  static final List<String> NAMES =
      List.of(
          "person",
          "site",
          "train",
          "machine",
          "point",
          "channel",
          "channel_setting",
          "point_channel",
          "voting_group",
          "voting_member",
          "tolerance_profile",
          "tolerance_profile_version",
          "tolerance_profile_band",
          "family",
          "family_length",
          "family_pair",
          "family_version",
          "data_sheet",
          "alloy_group",
          "alloy",
          "component",
          "component_fact",
          "component_fact_retired",
          "loop_event",
          "placement",
          "placement_retired",
          "field_circuit",
          "placement_dispute",
          "placement_dispute_settled",
          "combination",
          "combination_part",
          "calibration_draft",
          "calibration",
          "calibration_reading",
          "impact_review",
          "impact_signoff",
          "gap_round",
          "cause_weights",
          "cause_weight",
          "law_evidence",
          "law_evidence_withdrawn",
          "concession",
          "concession_step",
          "outage",
          "outage_train",
          "outage_step",
          "outage_scope",
          "work_template",
          "pack_revision",
          "pack_loop",
          "pack_return",
          "bypass",
          "bypass_step",
          "calendar_address",
          "point_mounting",
          "spare_reservation",
          "spare_held",
          "spare_release",
          "spare_wish",
          "kit",
          "kit_held",
          "kit_dissolved",
          "emergent_work",
          "temporary_fit",
          "temporary_fit_step",
          "suspicion",
          "suspicion_withdrawn",
          "gap_reading",
          "reference_standard",
          "standard_certificate",
          "standard_range",
          "standard_event",
          "standard_trace",
          "calibration_standard",
          "minimum_stock",
          "authorisation",
          "authorisation_ended",
          "standard_concession",
          "calibration_signature",
          "calibration_superseded",
          "field_check",
          "field_check_entry",
          "attachment",
          "field_device",
          "field_device_ended",
          "field_entry",
          "field_decision",
          "field_photo");

  /**
   * The journal itself, the row that names this database, what can be worked out again from the
   * journaled tables, and when a device was last heard of.
   */
  static final Set<String> NOT_JOURNALED =
      Set.of(
          "change",
          "journal_entry",
          "journal_head",
          "installation",
          "occupancy",
          "component_fact_now",
          "loop_verdict",
          "attachment_piece",
          "field_device_seen");

  private static final Set<String> GROUPED = Set.of("calibration_reading");

  private static final Map<String, Journaled> BY_NAME =
      NAMES.stream()
          .map(Journaled::of)
          .collect(Collectors.toUnmodifiableMap(Journaled::name, Function.identity()));

  /** All of them, in the order in which verification reads them. */
  public static List<Journaled> all() {
    return NAMES.stream().map(Journaled::named).toList();
  }

  /** Whether a table of that name is journaled. */
  public static boolean is(String name) {
    return BY_NAME.containsKey(name);
  }

  /**
   * @throws IllegalArgumentException if there is none of that name
   */
  public static Journaled named(String name) {
    Journaled found = BY_NAME.get(name);
    if (found == null) {
      throw new IllegalArgumentException(name + " is not journaled.");
    }
    return found;
  }

  private static Journaled of(String name) {
    Table<?> table =
        DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
            .filter(each -> each.getName().toLowerCase(Locale.ROOT).equals(name))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("There is no table " + name + "."));
    return new Journaled(
        name, table, key(table), GROUPED.contains(name), AppAccount.INSERT_ONLY.contains(name));
  }

  private static Field<Long> key(Table<?> table) {
    UniqueKey<?> primary = table.getPrimaryKey();
    if (primary == null) {
      throw new IllegalStateException(table + " has no primary key.");
    }
    return primary.getFields().get(0).coerce(Long.class);
  }

  /** The columns of the primary key: rows are read, and groups hashed, in this order. */
  public List<Field<?>> order() {
    UniqueKey<? extends Record> primary = table.getPrimaryKey();
    return primary == null ? List.of(key) : List.copyOf(primary.getFields());
  }

  /** As people say it. */
  public String inWords() {
    return name.replace('_', ' ');
  }
}
