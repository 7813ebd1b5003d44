package loopwright.db;

import static loopwright.db.gen.Tables.INSTALLATION;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;

import java.sql.Connection;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import loopwright.db.gen.tables.records.JournalHeadRecord;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** What a database holds, as a backup notes it and a restore compares it. */
record Contents(
    String schema,
    Manifest.@Nullable Identity installation,
    Manifest.Head head,
    Map<String, Long> counts) {

  static Contents of(Connection owner) {
    DSLContext sql = DSL.using(owner, SQLDialect.H2);
    return new Contents(schema(sql), installation(sql), head(sql), counts(sql));
  }

  private static String schema(DSLContext sql) {
    return String.valueOf(
        sql.fetchValue(
            "SELECT \"version\" FROM \"flyway_schema_history\""
                + " WHERE \"success\" AND \"version\" IS NOT NULL"
                + " ORDER BY \"installed_rank\" DESC LIMIT 1"));
  }

  private static Manifest.@Nullable Identity installation(DSLContext sql) {
    return sql.selectFrom(INSTALLATION)
        .fetchOptional(row -> new Manifest.Identity(row.getUuid(), row.getPurpose()))
        .orElse(null);
  }

  private static Manifest.Head head(DSLContext sql) {
    JournalHeadRecord head = sql.selectFrom(JOURNAL_HEAD).fetchSingle();
    return new Manifest.Head(head.getSeq(), HexFormat.of().formatHex(head.getChainHash()));
  }

  /** Tables that are there, whichever version of the program made them. */
  private static Map<String, Long> counts(DSLContext sql) {
    Map<String, Long> counts = new TreeMap<>();
    sql.fetch(
            "SELECT table_name FROM information_schema.tables"
                + " WHERE table_schema = 'PUBLIC' AND table_type = 'BASE TABLE'")
        .getValues(0, String.class)
        .forEach(
            name ->
                counts.put(
                    name.toLowerCase(Locale.ROOT),
                    (long) sql.fetchCount(DSL.table(DSL.quotedName(name)))));
    return counts;
  }
}
