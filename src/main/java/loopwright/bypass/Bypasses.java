package loopwright.bypass;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jooq.DSLContext;

/** Keeps the log: entered, handed over, removed, and proved off by a second person. */
public final class Bypasses {
  private static final int MOST = 500;

  private final BypassStore store = new BypassStore();
  private final InstantSource clock;

  public Bypasses(InstantSource clock) {
    this.clock = clock;
  }

  long enter(Tx tx, NewBypass fresh) {
    if (fresh.began().isAfter(clock.instant())) {
      throw new Refused(BypassProblem.IN_FUTURE);
    }
    return store.add(tx, fresh);
  }

  void handOver(Tx tx, long id, long person, String toWhom, String note) {
    Bypass bypass = open(tx, id);
    String name = Text.needed("who takes it over", toWhom, 120);
    store.step(tx, bypass.id(), Bypass.HANDED_OVER, person, null, name, note);
  }

  void remove(Tx tx, long id, long person, String note) {
    Bypass bypass = open(tx, id);
    if (bypass.removed().isPresent()) {
      throw new Refused(BypassProblem.REMOVED_BEFORE, bypass.number());
    }
    store.step(tx, bypass.id(), Bypass.REMOVED, person, person, "", note);
  }

  /**
   * @throws Refused if it isn't removed, or the same person removed it
   */
  void prove(Tx tx, long id, long person, String note) {
    Bypass bypass = open(tx, id);
    Bypass.Step removed =
        bypass.removed().orElseThrow(() -> new Refused(BypassProblem.NOT_REMOVED, bypass.number()));
    if (removed.person() == person) {
      throw new Refused(BypassProblem.SAME_PERSON);
    }
    store.step(tx, bypass.id(), Bypass.PROVED, person, removed.person(), "", note);
  }

  private Bypass open(Tx tx, long id) {
    store.hold(tx, one(tx.sql(), id).point());
    Bypass bypass = one(tx.sql(), id);
    if (!bypass.isOpen()) {
      throw new Refused(BypassProblem.IS_OFF, bypass.number(), bypass.stateAt(clock.instant()));
    }
    return bypass;
  }

  /**
   * @throws Refused {@link BypassProblem#NO_SUCH}
   */
  Bypass one(DSLContext sql, long id) {
    return store.one(sql, id).orElseThrow(() -> new Refused(BypassProblem.NO_SUCH, "BY-" + id));
  }

  Optional<Bypass> find(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  /** Those whose removal nobody has proved, soonest to expire first. */
  public List<Bypass> open(DSLContext sql) {
    return store.open(sql, MOST);
  }

  List<Bypass> newest(DSLContext sql, long before, int most) {
    return store.before(sql, before, most);
  }

  List<Bypass> ofPoint(DSLContext sql, long point) {
    return store.ofPoint(sql, point, MOST);
  }

  /** All that were entered for an outage, newest first. */
  public List<Bypass> ofOutage(DSLContext sql, long outage) {
    return store.ofOutage(sql, outage, MOST);
  }
}
