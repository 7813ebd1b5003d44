package loopwright.spare;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.loop.Chain;
import loopwright.loop.Judging;
import loopwright.loop.PartSet;
import loopwright.loop.Promises;
import loopwright.loop.Proposed;
import loopwright.loop.Slot;
import loopwright.loop.Standings;
import loopwright.matching.PartState;
import loopwright.outage.Closing;
import loopwright.outage.Outage;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.pack.PutAside;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.register.Whereabouts;
import loopwright.web.Form;
import org.jooq.DSLContext;

/** Puts parts aside for loops of an outage, once they are proved to match. */
public final class Spares implements PutAside, Closing {
  private final SpareStore store = new SpareStore();
  private final WishStore wishes = new WishStore();
  private final Outages outages;
  private final Proposed proposed;
  private final Judging judging;
  private final Register register;
  private final Standings standings;
  private final InstantSource clock;

  public Spares(
      Outages outages,
      Proposed proposed,
      Judging judging,
      Register register,
      Standings standings,
      InstantSource clock) {
    this.outages = outages;
    this.proposed = proposed;
    this.judging = judging;
    this.register = register;
    this.standings = standings;
    this.clock = clock;
  }

  Outages outages() {
    return outages;
  }

  /** What loops are told of; made apart because loops are judged before all else. */
  public static Promises promises() {
    SpareStore store = new SpareStore();
    return (sql, components) -> {
      if (!store.isAnyHeld(sql)) {
        return Map.of();
      }
      Map<Long, Promises.Promise> promised = new HashMap<>();
      store
          .ofComponents(sql, components)
          .forEach(
              held ->
                  promised.put(
                      held.component(),
                      new Promises.Promise(
                          held.point(), "O-" + held.outage() + ", loop " + held.tag())));
      return promised;
    };
  }

  /** Deals over all open outages. */
  Allocations allocations(Wants.Sources sources) {
    return new Allocations(sources, this);
  }

  /** In the order in which they are fetched: by store and bin. */
  List<Held> ofOutageHeld(DSLContext sql, long outage) {
    return store.ofOutage(sql, outage);
  }

  @Override
  public Map<Long, List<String>> ofOutage(DSLContext sql, long outage) {
    Map<Long, List<String>> lines = new HashMap<>();
    store
        .ofOutage(sql, outage)
        .forEach(
            held ->
                lines
                    .computeIfAbsent(held.point(), any -> new ArrayList<>())
                    .add(
                        "%s: %s %s, %s; with it the loop is judged %s"
                            .formatted(
                                held.slot(),
                                held.words(),
                                held.label(),
                                held.where(),
                                held.verdict())));
    return lines;
  }

  /** A wish: which part for which slot of which loop. */
  record Wish(long point, String slot, String serial) {}

  /**
   * Puts a part aside. The loop is judged with the part in that slot and everything else as it is:
   * what could not be left so is not put aside.
   *
   * @param form takes complaints about the serial
   * @throws Refused if it doesn't match, isn't in stock, or is put aside already
   */
  void reserve(Tx tx, long id, Wish wish, Form form) {
    outages.hold(tx, id);
    Outage outage = outages.one(tx.sql(), id);
    Outages.refuseClosed(outage);
    ScopeLine line =
        outages.scope(tx.sql(), id).stream()
            .filter(one -> one.point() == wish.point())
            .findFirst()
            .orElseThrow(() -> new Refused(SpareProblem.NOT_IN_SCOPE, outage.number()));
    Slot slot = Slot.named(wish.slot()).orElseThrow(() -> new Refused(SpareProblem.NO_SLOT));
    refuseTaken(tx.sql(), id, line, slot);
    Chain chain = chain(tx.sql(), outage, wish, form);
    long component =
        chain.in(slot).component().orElseThrow(() -> new Refused(SpareProblem.NO_SLOT));
    Component part = register.component(tx.sql(), new ComponentId(component)).orElseThrow();
    refuseNotLying(part);
    Proof.Said said =
        new Proof(judging, clock)
            .of(tx.sql(), new Judging.Subject(line.point(), line.tag()), chain);
    if (!said.matches()) {
      throw new Refused(SpareProblem.DOES_NOT_MATCH, part.label(), line.tag(), said.against());
    }
    refuseHeld(tx.sql(), part);
    store.hold(tx, id, line.point(), slot.word(), component, said.verdict(), said.text());
  }

  /**
   * Puts a whole set aside: the loop is judged with all of it at once.
   *
   * @param name of the set, for sentences
   * @throws Refused if it doesn't match, or one of its parts isn't in stock or is put aside already
   */
  void reserve(Tx tx, long id, long point, String name, PartSet set) {
    outages.hold(tx, id);
    Outage outage = outages.one(tx.sql(), id);
    Outages.refuseClosed(outage);
    ScopeLine line =
        outages.scope(tx.sql(), id).stream()
            .filter(one -> one.point() == point)
            .findFirst()
            .orElseThrow(() -> new Refused(SpareProblem.NOT_IN_SCOPE, outage.number()));
    for (Slot slot : set.slots()) {
      refuseTaken(tx.sql(), id, line, slot);
      Component part =
          register
              .component(tx.sql(), new ComponentId(set.part(slot).number()))
              .orElseThrow(() -> new Refused(SpareProblem.NO_SLOT));
      refuseNotLying(part);
      refuseHeld(tx.sql(), part);
    }
    Proof.Said said =
        new Proof(judging, clock)
            .of(tx.sql(), new Judging.Subject(line.point(), line.tag()), set.asChain());
    if (!said.matches()) {
      throw new Refused(SpareProblem.DOES_NOT_MATCH, name, line.tag(), said.against());
    }
    for (Slot slot : set.slots()) {
      store.hold(tx, id, point, slot.word(), set.part(slot).number(), said.verdict(), said.text());
    }
  }

  /**
   * Says that a spare is wanted for a slot, whichever it is, or no longer.
   *
   * @throws Refused if the loop is not in the scope, or that is said already
   */
  void wish(Tx tx, long id, long point, String typedSlot, boolean wanted, String reason) {
    outages.hold(tx, id);
    Outage outage = outages.one(tx.sql(), id);
    Outages.refuseClosed(outage);
    String tag =
        outages.scope(tx.sql(), id).stream()
            .filter(one -> one.point() == point)
            .map(ScopeLine::tag)
            .findFirst()
            .orElse("");
    if (wanted && tag.isEmpty()) {
      throw new Refused(SpareProblem.NOT_IN_SCOPE, outage.number());
    }
    String slot = Slot.named(typedSlot).orElseThrow(() -> new Refused(SpareProblem.NO_SLOT)).word();
    boolean standing =
        wishes.standing(tx.sql(), id).stream()
            .anyMatch(wish -> wish.point() == point && wish.slot().equals(slot));
    if (standing == wanted) {
      throw wanted
          ? new Refused(SpareProblem.WISHED_BEFORE, tag)
          : new Refused(SpareProblem.NO_WISH);
    }
    wishes.put(tx, id, point, slot, wanted, reason);
  }

  /** Says that a spare is wanted for a slot of a loop that the outage takes. */
  public static void want(Tx tx, long outage, long point, String slot, String reason) {
    new WishStore().put(tx, outage, point, slot, true, reason);
  }

  List<WishStore.Standing> wishes(DSLContext sql, long outage) {
    return wishes.standing(sql, outage);
  }

  private void refuseTaken(DSLContext sql, long outage, ScopeLine line, Slot slot) {
    store.ofOutage(sql, outage).stream()
        .filter(held -> held.point() == line.point() && held.slot().equals(slot.word()))
        .findFirst()
        .ifPresent(
            held -> {
              throw new Refused(SpareProblem.SLOT_TAKEN, held.label(), line.tag());
            });
  }

  private Chain chain(DSLContext sql, Outage outage, Wish wish, Form form) {
    Form whole = proposed.asFitted(sql, wish.point(), outage.zone());
    whole.put(wish.slot(), wish.serial().strip());
    return proposed
        .chain(sql, wish.point(), whole, clock.instant(), outage.zone())
        .orElseThrow(
            () -> {
              whole.complaints().values().forEach(said -> form.complain("serial", said));
              return new Refused(
                  SpareProblem.DOES_NOT_MATCH,
                  wish.serial(),
                  "the loop",
                  String.join(" ", whole.complaints().values()));
            });
  }

  private static void refuseNotLying(Component part) {
    if (part.state() != PartState.IN_STOCK) {
      throw new Refused(SpareProblem.NOT_ON_A_SHELF, part.label(), part.state().word());
    }
  }

  private void refuseHeld(DSLContext sql, Component part) {
    store.ofComponents(sql, List.of(part.id().number())).stream()
        .findFirst()
        .ifPresent(
            held -> {
              throw new Refused(
                  SpareProblem.HELD, part.label(), "O-" + held.outage() + ", " + held.tag());
            });
  }

  /**
   * @throws Refused {@link SpareProblem#NOT_HELD}
   */
  void release(Tx tx, long outage, long reservation, String reason) {
    outages.hold(tx, outage);
    Held held =
        store.ofOutage(tx.sql(), outage).stream()
            .filter(one -> one.reservation() == reservation)
            .findFirst()
            .orElseThrow(() -> new Refused(SpareProblem.NOT_HELD));
    release(tx, held, reason);
  }

  /** Frees it; loops that hold the part meanwhile are judged anew. */
  void release(Tx tx, Held held, String reason) {
    store.release(tx, held, reason);
    standings.refreshAtEnd(
        tx,
        register.now(tx.sql(), new ComponentId(held.component())).stream()
            .map(Whereabouts::point)
            .toList());
  }

  /** What was put aside is free again. */
  @Override
  public void closing(Tx tx, Outage outage) {
    store
        .ofOutage(tx.sql(), outage.id())
        .forEach(held -> release(tx, held, outage.number() + " is closed."));
  }
}
