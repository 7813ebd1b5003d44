package loopwright.alloy;

import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.matching.Alloys;
import loopwright.problem.Refused;
import loopwright.register.ChangeNote;
import org.jooq.DSLContext;

/** Groups of alloys. An alloy belongs to one group only. */
public final class AlloyBook {
  private final AlloyStore store = new AlloyStore();
  private final AlloyWatch watch;

  /**
   * @param watch told in the same change when a group is new or changed
   */
  public AlloyBook(AlloyWatch watch) {
    this.watch = watch;
  }

  /** Told in the same change when a group is new or changed. */
  @FunctionalInterface
  public interface AlloyWatch {
    /** Nobody wants to know. */
    AlloyWatch NOBODY = (tx, first) -> {};

    /**
     * @param first whether nobody kept groups before: then every loop may be judged otherwise
     */
    void alloysChanged(Tx tx, boolean first);
  }

  /**
   * A group as recorded.
   *
   * @param version grows with each change
   */
  public record Group(long id, GroupDetails details, int version) {}

  /** By name. */
  public List<Group> groups(DSLContext sql) {
    return store.groups(sql);
  }

  public Optional<Group> group(DSLContext sql, long id) {
    return store.groups(sql).stream().filter(group -> group.id() == id).findFirst();
  }

  /** Who changed the group or one of its alloys last. */
  Optional<ChangeNote> lastChange(DSLContext sql, long id) {
    return store.lastChange(sql, id);
  }

  /** As the rules see them; given even if nobody keeps any. */
  public Alloys asJudged(DSLContext sql) {
    return Alloys.of(groups(sql).stream().map(group -> group.details().asJudged()).toList());
  }

  /**
   * @throws Refused if the name or one of the alloys stands in another group
   */
  public long add(Tx tx, GroupDetails details) {
    refuseTaken(tx.sql(), 0, details);
    boolean first = groups(tx.sql()).isEmpty();
    long id = store.insert(tx, details);
    watch.alloysChanged(tx, first);
    return id;
  }

  /** Begins with the groups of common practice, where nobody keeps any. */
  public void begin(Tx tx) {
    if (groups(tx.sql()).isEmpty()) {
      UsualGroups.all().forEach(details -> store.insert(tx, details));
      watch.alloysChanged(tx, true);
    }
  }

  /**
   * @param version that the changer saw
   */
  public void change(Tx tx, long id, int version, GroupDetails details) {
    refuseTaken(tx.sql(), id, details);
    store.update(tx, id, version, details);
    watch.alloysChanged(tx, false);
  }

  private void refuseTaken(DSLContext sql, long self, GroupDetails details) {
    for (Group other : groups(sql)) {
      if (other.id() == self) {
        continue;
      }
      if (Alloys.same(other.details().name(), details.name())) {
        throw new Refused(AlloyProblem.GROUP_TAKEN, other.details().name());
      }
      for (String alloy : details.alloys()) {
        if (other.details().alloys().stream().anyMatch(known -> Alloys.same(known, alloy))) {
          throw new Refused(AlloyProblem.ALLOY_TAKEN, alloy, other.details().name());
        }
      }
    }
  }
}
