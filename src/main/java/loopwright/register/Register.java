package loopwright.register;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.journal.KnownTimeStore;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Parts and what is believed of them. Reads take the context that {@code Database.read} or {@code
 * Tx.sql} gives; writes happen inside the caller's change. Nothing is ever updated away: a changed
 * fact is a new belief, the old one stays readable.
 */
public final class Register {
  private final ComponentStore components = new ComponentStore();
  private final FactStore facts = new FactStore();
  private final WhereaboutsStore whereabouts = new WhereaboutsStore();
  private final FamilyStore families = new FamilyStore();
  private final FactsWatch watch;

  /**
   * @param watch told of each change of facts of a part that was registered before
   */
  public Register(FactsWatch watch) {
    this.watch = watch;
  }

  public Optional<Component> component(DSLContext sql, ComponentId id) {
    return components.component(sql, id);
  }

  /** By number; those that don't exist are not in it. */
  public Map<Long, Component> components(DSLContext sql, Collection<Long> numbers) {
    return components.components(sql, numbers);
  }

  public Optional<Component> identified(DSLContext sql, PartIdentity identity) {
    return components.identified(sql, identity);
  }

  /** Many at once, for files: by {@link PartIdentity#key}. */
  public Map<String, Component> identified(DSLContext sql, Collection<PartIdentity> identities) {
    return components.identified(sql, identities);
  }

  /** Every part of that serial or shop number in any spelling, whatever its maker. */
  public List<Component> labelled(DSLContext sql, String label) {
    return components.labelled(sql, label);
  }

  /** What is believed of the part now, over all time, oldest first. */
  public List<Belief> beliefs(DSLContext sql, ComponentId id) {
    return facts.held(sql, id);
  }

  /** Every belief ever held of the part, the latest said first, with who, when and why. */
  public List<Belief> history(DSLContext sql, ComponentId id) {
    return facts.all(sql, id);
  }

  /** Where the part is now: nowhere, or several channels of a driver box. */
  public List<Whereabouts> now(DSLContext sql, ComponentId id) {
    return whereabouts.now(sql, List.of(id.number())).getOrDefault(id.number(), List.of());
  }

  /** Every stay of the part in a loop, the latest first. */
  public List<Whereabouts> story(DSLContext sql, ComponentId id) {
    return whereabouts.story(sql, id);
  }

  /**
   * Every stay that was known of the part at a viewpoint and had begun by its moment, the latest
   * first.
   */
  public List<Whereabouts> story(DSLContext sql, ComponentId id, Viewpoint viewpoint) {
    Long entry = viewpoint.known();
    List<Whereabouts> known =
        entry == null ? whereabouts.story(sql, id) : whereabouts.story(sql, id, entry);
    return known.stream().filter(stay -> !stay.span().from().isAfter(viewpoint.at())).toList();
  }

  /** The belief that counts at a viewpoint; empty where nothing was known of the part then. */
  public Optional<Belief> belief(DSLContext sql, ComponentId id, Viewpoint viewpoint) {
    return Optional.ofNullable(facts.at(sql, List.of(id.number()), viewpoint).get(id.number()));
  }

  /** What had been said of the part when the record ended with that entry, the latest first. */
  public List<Belief> history(DSLContext sql, ComponentId id, long entry) {
    List<Belief> all = facts.all(sql, id);
    Set<Long> known =
        KnownTimeStore.known(
            sql,
            entry,
            all.stream()
                .flatMap(belief -> Stream.ofNullable(belief.made()))
                .map(ChangeNote::change)
                .toList());
    return all.stream()
        .filter(belief -> belief.made() != null && known.contains(belief.made().change()))
        .toList();
  }

  /** The last change of the part's record, for whoever meets it while editing. */
  public ChangeNote lastChange(DSLContext sql, ComponentId id) {
    return components
        .lastChange(sql, id)
        .orElseThrow(() -> new Refused(RegisterProblem.NOT_THERE, "part number", id.number()));
  }

  /**
   * The clock on which moments about a part are told: of the site where it is or was last, else of
   * all sites if they share one, else UTC.
   *
   * @param id null for a part that is not registered yet
   */
  public ZoneId clock(DSLContext sql, @Nullable ComponentId id) {
    return whereabouts.clock(sql, id);
  }

  /**
   * Registers a part.
   *
   * @throws Refused {@link RegisterProblem#DUPLICATE_SERIAL} naming the part that has the serial
   */
  public ComponentId add(Tx tx, NewComponent part) {
    refuseFuture(tx, part.from());
    refuseTaken(tx.sql(), part.details().identity(), Optional.empty());
    refuseUnknownFamily(tx.sql(), part.facts());
    ComponentId id =
        components.insert(tx, part.details(), part.facts(), unplaced(part.facts().condition()));
    facts.begin(tx, id, part.facts(), Span.from(part.from()));
    return id;
  }

  private static PartState unplaced(Condition condition) {
    return switch (condition) {
      case USABLE -> PartState.IN_STOCK;
      case QUARANTINED -> PartState.QUARANTINED;
      case SCRAPPED -> PartState.SCRAPPED;
    };
  }

  /**
   * Corrects what names and describes the part.
   *
   * @param version that the changer saw
   * @throws Refused if another part has the name, or the kind changes of a part that was placed
   */
  public void changeDetails(Tx tx, ComponentId id, int version, ComponentDetails details) {
    Component was = needed(tx.sql(), id);
    refuseTaken(tx.sql(), details.identity(), Optional.of(id));
    if (was.kind() != details.kind() && components.wasPlaced(tx.sql(), id)) {
      throw new Refused(RegisterProblem.KIND_IS_PLACED, was.label(), was.kind().word());
    }
    components.updateDetails(tx, id, version, details);
    watch.factsChanged(tx, id);
  }

  /**
   * Says what is so since a moment: a cable re-terminated, a system length set anew. Each fact that
   * changes holds until the moment at which the same fact was next recorded to change.
   *
   * @return whether anything is different from what was believed
   */
  public boolean changeFacts(
      Tx tx, ComponentId id, Instant from, UnaryOperator<ComponentFacts> change) {
    refuseFuture(tx, from);
    needed(tx.sql(), id);
    List<Belief> held = facts.held(tx.sql(), id);
    FactTimeline timeline = FactTimeline.of(held, from, change);
    if (timeline.isEmpty()) {
      return false;
    }
    timeline.taken().forEach(belief -> refuseUnknownFamily(tx.sql(), belief.facts()));
    facts.rewrite(tx, id, held, timeline);
    List<Belief> now = facts.held(tx.sql(), id);
    components.updateFacts(tx, id, now.get(now.size() - 1).facts());
    watch.factsChanged(tx, id);
    return true;
  }

  /** Says that the record was wrong from its beginning, for instance a misread length. */
  public boolean correctFacts(Tx tx, ComponentId id, UnaryOperator<ComponentFacts> change) {
    needed(tx.sql(), id);
    return changeFacts(tx, id, facts.held(tx.sql(), id).get(0).span().from(), change);
  }

  /** From now on the part may not be used, wherever it is. */
  public void quarantine(Tx tx, ComponentId id, String reason) {
    setCondition(tx, id, Condition.QUARANTINED, reason);
  }

  /**
   * From now on the part is no more.
   *
   * @throws Refused {@link RegisterProblem#STILL_FITTED} if it is recorded as fitted somewhere
   */
  public void scrap(Tx tx, ComponentId id, String reason) {
    refuseFitted(tx, id, "scrapped");
    setCondition(tx, id, Condition.SCRAPPED, reason);
  }

  /**
   * From now on the part may be used again and lies on that shelf. The reason stands with the
   * change.
   */
  public void returnToStock(Tx tx, ComponentId id, Shelf shelf) {
    Component part = needed(tx.sql(), id);
    boolean changed =
        changeFacts(
            tx, id, tx.at(), facts -> facts.withCondition(Condition.USABLE, "").withShelf(shelf));
    if (!changed) {
      throw new Refused(RegisterProblem.ALREADY_SO, part.label(), "usable");
    }
  }

  /**
   * Since a moment the part, taken out of a loop, lies on that shelf, or is quarantined there.
   *
   * @param quarantine why it may not be used; empty when it may
   * @throws Refused {@link RegisterProblem#STILL_FITTED} if it is recorded as fitted now
   */
  public void putAway(Tx tx, ComponentId id, Instant from, Shelf shelf, String quarantine) {
    refuseFitted(tx, id, "put away");
    changeFacts(
        tx,
        id,
        from,
        facts ->
            quarantine.isBlank()
                ? facts.withShelf(shelf)
                : facts.withShelf(shelf).withCondition(Condition.QUARANTINED, quarantine));
  }

  private void setCondition(Tx tx, ComponentId id, Condition condition, String reason) {
    Component part = needed(tx.sql(), id);
    if (reason.isBlank()) {
      throw new Refused(RegisterProblem.REASON_NEEDED);
    }
    if (part.facts().condition() == condition) {
      throw new Refused(RegisterProblem.ALREADY_SO, part.label(), condition.word());
    }
    changeFacts(tx, id, tx.at(), facts -> facts.withCondition(condition, reason));
  }

  /** Makes the part's state follow from its condition and from where it is placed. */
  public void refreshState(Tx tx, ComponentId id) {
    components.refreshState(tx, id);
  }

  /**
   * Refuses an edit of a part that has changed since the editor saw it.
   *
   * @param version that the editor saw
   */
  public void refuseStale(Tx tx, ComponentId id, int version) {
    if (needed(tx.sql(), id).version() != version) {
      throw new Refused(DbProblem.STALE);
    }
  }

  private Component needed(DSLContext sql, ComponentId id) {
    return component(sql, id)
        .orElseThrow(() -> new Refused(RegisterProblem.NOT_THERE, "part number", id.number()));
  }

  private void refuseTaken(DSLContext sql, PartIdentity identity, Optional<ComponentId> self) {
    Optional<Component> other =
        identified(sql, identity).filter(found -> !Optional.of(found.id()).equals(self));
    if (other.isPresent()) {
      throw taken(identity, other.get());
    }
  }

  private static Refused taken(PartIdentity identity, Component other) {
    String known = other.inWords() + " (" + other.state().word() + ")";
    return identity.hasSerial()
        ? new Refused(
            RegisterProblem.DUPLICATE_SERIAL,
            identity.serial(),
            identity.maker(),
            identity.model(),
            known)
        : new Refused(RegisterProblem.DUPLICATE_SHOP_NUMBER, identity.shopNumber(), known);
  }

  private void refuseUnknownFamily(DSLContext sql, ComponentFacts facts) {
    FamilyId family = facts.family();
    if (family != null && !families.exists(sql, family)) {
      throw new Refused(RegisterProblem.UNKNOWN_FAMILY, family.number());
    }
  }

  private void refuseFitted(Tx tx, ComponentId id, String participle) {
    List<Whereabouts> now = now(tx.sql(), id);
    if (!now.isEmpty()) {
      Whereabouts here = now.get(0);
      throw new Refused(
          RegisterProblem.STILL_FITTED,
          needed(tx.sql(), id).label(),
          here.tag(),
          here.slot(),
          participle);
    }
  }

  private static void refuseFuture(Tx tx, Instant from) {
    if (from.isAfter(tx.at())) {
      throw new Refused(RegisterProblem.IN_FUTURE, from);
    }
  }
}
