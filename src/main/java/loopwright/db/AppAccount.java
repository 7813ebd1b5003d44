package loopwright.db;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.db.gen.DefaultSchema;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;

/**
 * The account the program works under once the tables are migrated. It can't update or delete in
 * insert-only tables. That guards against accident, not against whoever holds the file.
 */
final class AppAccount {
  static final String NAME = "LOOPWRIGHT_APP";

  static final Set<String> INSERT_ONLY =
      Set.of(
          "change",
          "journal_entry",
          "loop_event",
          "placement",
          "placement_retired",
          "placement_dispute",
          "placement_dispute_settled",
          "component_fact",
          "component_fact_retired",
          "channel_setting",
          "tolerance_profile_version",
          "tolerance_profile_band",
          "family_version",
          "data_sheet",
          "field_circuit",
          "combination",
          "combination_part",
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
          "outage_train",
          "outage_step",
          "outage_scope",
          "work_template",
          "pack_revision",
          "pack_loop",
          "pack_return",
          "bypass",
          "bypass_step",
          "spare_reservation",
          "point_mounting",
          "spare_release",
          "spare_wish",
          "kit",
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
          "attachment_piece",
          "field_device",
          "field_device_ended",
          "field_entry",
          "field_decision",
          "field_photo");

  private AppAccount() {}

  static void ensure(DSLContext owner) {
    if (owner.dialect() == SQLDialect.H2) {
      owner.execute("CREATE USER IF NOT EXISTS " + NAME + " PASSWORD ''");
    } else if (owner
        .fetch("SELECT 1 FROM pg_roles WHERE rolname = ?", "loopwright_app")
        .isEmpty()) {
      owner.execute("CREATE ROLE " + NAME);
    }
    grants(owner.dialect()).forEach(owner::execute);
  }

  private static Stream<String> grants(SQLDialect dialect) {
    List<String> tables =
        DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
            .map(t -> t.getName().toLowerCase(Locale.ROOT))
            .toList();
    Stream<String> onTables =
        tables.stream()
            .map(
                table ->
                    "GRANT SELECT, INSERT"
                        + (INSERT_ONLY.contains(table) ? "" : ", UPDATE, DELETE")
                        + " ON "
                        + table
                        + " TO "
                        + NAME);
    return dialect == SQLDialect.H2
        ? onTables
        : Stream.concat(
            onTables, Stream.of("GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO " + NAME));
  }
}
