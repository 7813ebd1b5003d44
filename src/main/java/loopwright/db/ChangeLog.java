package loopwright.db;

import java.time.Instant;
import java.util.List;
import org.jooq.DSLContext;

/** Where the door writes what each change did, inside the same transaction. */
public interface ChangeLog {

  /** Makes an empty log ready in a fresh database; does nothing in one that has it. */
  void prepare(DSLContext sql);

  /**
   * Appends one part of a change. Takes the log's lock until the transaction ends.
   *
   * @param part counted from 1 within the change
   * @param last whether the change is complete with it
   */
  void append(
      DSLContext sql, long changeId, Act act, Instant at, int part, boolean last, List<Fact> facts);
}
