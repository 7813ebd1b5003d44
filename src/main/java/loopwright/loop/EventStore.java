package loopwright.loop;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.LOOP_EVENT;

import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.LoopEventRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.matching.Judgement;
import loopwright.matching.Verdict;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** What happened to loops. Insert-only. */
final class EventStore {
  private static final String BETWEEN = "\t";

  void add(Tx tx, long point, String kind, Instant at, @Nullable Judgement judged, String note) {
    LoopEventRecord row = tx.row(LOOP_EVENT);
    row.setPointId(point);
    row.setKind(kind);
    row.setHappenedAt(Tx.moment(at));
    if (judged != null && judged.verdict() != Verdict.NOT_JUDGED) {
      row.setVerdict(judged.verdict().word());
    }
    row.setFindings(judged == null ? "" : told(judged));
    row.setNote(note);
    tx.insert(row);
  }

  /** A line a finding that isn't merely <em>matches</em> or <em>not judged</em>. */
  private static String told(Judgement judged) {
    return judged.findings().stream()
        .filter(finding -> finding.verdict().isWorseThan(Verdict.MATCHES))
        .map(
            finding ->
                String.join(
                    BETWEEN,
                    finding.verdict().word().toLowerCase(Locale.ROOT),
                    finding.rule().name(),
                    finding.sentences().replace('\t', ' ').replace('\n', ' ')))
        .collect(Collectors.joining("\n"));
  }

  /** Whether such a thing happened there in that time, its end included. */
  boolean isOneBetween(DSLContext sql, long point, String kind, Instant from, Instant until) {
    return sql.fetchExists(
        LOOP_EVENT,
        LOOP_EVENT.POINT_ID.eq(point),
        LOOP_EVENT.KIND.eq(kind),
        LOOP_EVENT.HAPPENED_AT.between(Tx.moment(from), Tx.moment(until)));
  }

  /** Whether somebody said for exactly that moment what was fitted there. */
  boolean claimedAt(DSLContext sql, long point, Instant at) {
    return sql.fetchExists(
        LOOP_EVENT,
        LOOP_EVENT.POINT_ID.eq(point),
        LOOP_EVENT.KIND.in("survey", "assembly", "import", "correction"),
        LOOP_EVENT.HAPPENED_AT.eq(Tx.moment(at)));
  }

  /** Those of the points to which such a thing happened, with the last moment of it. */
  Map<Long, Instant> last(DSLContext sql, Collection<Long> points, String kind) {
    return sql.select(LOOP_EVENT.POINT_ID, DSL.max(LOOP_EVENT.HAPPENED_AT))
        .from(LOOP_EVENT)
        .where(LOOP_EVENT.POINT_ID.in(points))
        .and(LOOP_EVENT.KIND.eq(kind))
        .groupBy(LOOP_EVENT.POINT_ID)
        .fetchMap(LOOP_EVENT.POINT_ID, row -> row.value2().toInstant());
  }

  /** Newest first. */
  List<LoopEvent> ofPoint(DSLContext sql, long point) {
    return sql.select(LOOP_EVENT.asterisk(), CHANGE.ACTOR_NAME, CHANGE.MADE_AT, CHANGE.REASON)
        .from(LOOP_EVENT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(LOOP_EVENT.CHANGE_ID))
        .where(LOOP_EVENT.POINT_ID.eq(point))
        .orderBy(LOOP_EVENT.HAPPENED_AT.desc(), LOOP_EVENT.ID.desc())
        .fetch(EventStore::event);
  }

  /** What had happened by the viewpoint's moment and was known then, newest first. */
  List<LoopEvent> ofPoint(DSLContext sql, long point, Viewpoint viewpoint) {
    List<LoopEvent> all =
        ofPoint(sql, point).stream()
            .filter(event -> !event.happenedAt().isAfter(viewpoint.at()))
            .toList();
    Long entry = viewpoint.known();
    if (entry == null) {
      return all;
    }
    Set<Long> known =
        KnownTimeStore.known(sql, entry, all.stream().map(LoopEvent::change).toList());
    return all.stream().filter(event -> known.contains(event.change())).toList();
  }

  private static LoopEvent event(Record row) {
    return new LoopEvent(
        row.get(LOOP_EVENT.ID),
        row.get(LOOP_EVENT.KIND),
        row.get(LOOP_EVENT.HAPPENED_AT).toInstant(),
        row.get(LOOP_EVENT.VERDICT),
        findings(row.get(LOOP_EVENT.FINDINGS)),
        row.get(LOOP_EVENT.NOTE),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.REASON),
        row.get(LOOP_EVENT.CHANGE_ID));
  }

  private static List<LoopEvent.Told> findings(String lines) {
    return Arrays.stream(lines.split("\n"))
        .map(line -> line.split(BETWEEN, 3))
        .filter(parts -> parts.length == 3)
        .map(parts -> new LoopEvent.Told(parts[0], parts[1], parts[2]))
        .toList();
  }
}
