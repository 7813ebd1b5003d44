package loopwright.bypass;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Keeps the log: entered, handed over, removed, and proved off by a second person. */
public final class Bypasses {
  private static final int MOST = 500;

  private final BypassStore store = new BypassStore();
  private final InstantSource clock;

  public Bypasses(InstantSource clock) {
    this.clock = clock;
  }

  /** A form sent twice gives one entry. */
  long enter(Tx tx, NewBypass fresh) {
    if (fresh.began().isAfter(clock.instant())) {
      throw new Refused(BypassProblem.IN_FUTURE);
    }
    store.hold(tx, fresh.point());
    return store.numbered(tx.sql(), fresh.point(), fresh.siteNumber()).stream()
        .filter(known -> known.isOpen() && known.isToldBy(fresh))
        .findFirst()
        .map(Bypass::id)
        .orElseGet(() -> store.add(tx, fresh));
  }

  void handOver(Tx tx, long id, long person, String toWhom, String note) {
    Bypass bypass = open(tx, id);
    String name = Text.needed("who takes it over", toWhom, 120);
    bypass
        .pending()
        .filter(step -> step.toWhom().equalsIgnoreCase(name))
        .ifPresent(
            step -> {
              throw new Refused(BypassProblem.HANDED_BEFORE, step.toWhom());
            });
    store.step(tx, bypass.id(), Bypass.HANDED_OVER, person, null, name, tx.at(), note);
  }

  /** Until then the one before answers for it. */
  void acknowledge(Tx tx, long id, long person, String note) {
    Bypass bypass = open(tx, id);
    Bypass.Step handed =
        bypass.pending().orElseThrow(() -> new Refused(BypassProblem.NOT_HANDED, bypass.number()));
    if (handed.person() == person) {
      throw new Refused(BypassProblem.OWN_HAND_OVER);
    }
    store.step(tx, bypass.id(), Bypass.ACKNOWLEDGED, person, null, handed.toWhom(), tx.at(), note);
  }

  void remove(Tx tx, long id, long person, String note) {
    Bypass bypass = open(tx, id);
    if (bypass.removed().isPresent()) {
      throw new Refused(BypassProblem.REMOVED_BEFORE, bypass.number());
    }
    store.step(tx, bypass.id(), Bypass.REMOVED, person, person, "", tx.at(), note);
  }

  /**
   * @throws Refused if it isn't removed, or the same person removed it or entered that
   */
  void prove(Tx tx, long id, long person, String note) {
    Bypass bypass = open(tx, id);
    Bypass.Step removed =
        bypass.removed().orElseThrow(() -> new Refused(BypassProblem.NOT_REMOVED, bypass.number()));
    if (removed.person() == person || removed.enteredBy() == person) {
      throw new Refused(BypassProblem.SAME_PERSON);
    }
    store.step(tx, bypass.id(), Bypass.PROVED, person, removed.person(), "", tx.at(), note);
  }

  /** The one of that loop under that number of the site's procedure, if it is in the log. */
  public Optional<Bypass> numbered(DSLContext sql, long point, String siteNumber) {
    return store.numbered(sql, point, siteNumber).stream().findFirst();
  }

  /**
   * Keeps what a sheet tells of a bypass. One that is in the log already stays as it was entered;
   * only its removal is added.
   *
   * @param removal null while it is on
   * @param person who brings the sheet
   * @return the entry's number
   * @throws Refused {@link BypassProblem#IN_FUTURE}
   */
  public String bringBack(
      Tx tx, NewBypass told, @Nullable Removal removal, long person, String sheet) {
    store.hold(tx, told.point());
    Optional<Bypass> known = numbered(tx.sql(), told.point(), told.siteNumber());
    long id = known.map(Bypass::id).orElseGet(() -> enter(tx, told));
    boolean stands = known.map(one -> one.removed().isEmpty()).orElse(true);
    if (removal != null && stands) {
      long by = store.personCalled(tx.sql(), removal.by()).orElse(person);
      String note = "Taken off by %s, as %s says.".formatted(removal.by(), sheet);
      store.step(tx, id, Bypass.REMOVED, by, by, "", removal.at(), note);
    }
    return one(tx.sql(), id).number();
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
