package loopwright.importing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.problem.Problem;
import loopwright.sheet.Complaints;
import org.jooq.DSLContext;

/**
 * A plan in the making: the rows' fates and the steps of the run, collected kind by kind. Used by
 * one thread.
 */
final class Planning {
  final DSLContext sql;
  final Instant now;
  final Features features;
  final World world = new World();
  final Complaints complaints = new Complaints();
  final List<Step> steps = new ArrayList<>();
  final Parts parts = new Parts();
  final Tags tags = new Tags(this);
  final Fitted fitted = new Fitted(this);

  /** Codes by number, planned families too. */
  final Map<Long, String> familyCodes = new HashMap<>();

  /** Codes of tolerance profiles by the number of a family that the files add or change. */
  final Map<Long, String> familyProfiles = new HashMap<>();

  private final Map<RowPlace, RowFate> fates = new LinkedHashMap<>();

  Planning(DSLContext sql, Instant now, Features features) {
    this.sql = sql;
    this.now = now;
    this.features = features;
  }

  void fate(RowFate fate) {
    fates.put(new RowPlace(fate.file(), fate.row()), fate);
  }

  void refused(RowCells row, String what) {
    fate(RowFate.of(row.place(), Fate.REFUSED, what));
  }

  /** A row that couldn't be read at all. */
  void unread(RowPlace row) {
    fates.putIfAbsent(row, new RowFate(row.file(), row.line(), Fate.REFUSED, "", List.of(), ""));
  }

  /** Refuses a row after all. */
  void refuse(RowPlace row) {
    fates.computeIfPresent(row, (place, fate) -> fate.refused());
  }

  /** Refuses a row after all, with the reason. */
  void refuse(RowPlace row, String heading, Problem problem, Object... parts) {
    Object[] all = new Object[parts.length + 3];
    all[0] = row.file();
    all[1] = row.line();
    all[2] = heading;
    System.arraycopy(parts, 0, all, 3, parts.length);
    complaints.add(problem, all);
    refuse(row);
  }

  /** Something more that a row changes. */
  void changes(RowPlace row, FieldChange change) {
    fates.computeIfPresent(row, (place, fate) -> fate.changing(change));
  }

  List<RowFate> fates() {
    return List.copyOf(fates.values());
  }
}
