package loopwright.kit;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.loop.KeptTogether;
import loopwright.loop.PartSet;
import loopwright.loop.Standings;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.register.Whereabouts;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Makes and dissolves kits, and says of a part to which one it belongs. */
public final class Kits {
  private final KitStore store = new KitStore();
  private final Register register;
  private final Standings standings;

  public Kits(Register register, Standings standings) {
    this.register = register;
    this.standings = standings;
  }

  /** What loops are told of; made apart because loops are judged before all else. */
  public static KeptTogether keptTogether(Register register) {
    KitStore store = new KitStore();
    return (sql, components) -> {
      if (!store.isAny(sql)) {
        return Map.of();
      }
      Map<Long, KeptTogether.Kit> kits = new TreeMap<>();
      store
          .holding(sql, components)
          .forEach((component, kit) -> kits.put(component, told(sql, register, kit)));
      return kits;
    };
  }

  private static KeptTogether.Kit told(DSLContext sql, Register register, Kit kit) {
    Map<Long, Component> found = register.components(sql, kit.set().components());
    Map<Long, String> words = new TreeMap<>();
    found.forEach((number, part) -> words.put(number, part.inWords()));
    return new KeptTogether.Kit("kit " + kit.name() + " (" + kit.number() + ")", words);
  }

  /**
   * Keeps parts together from now on.
   *
   * @return its number
   * @throws Refused if one of them isn't on a shelf or belongs to a kit, or the name is taken
   */
  public long make(Tx tx, String name, PartSet set, String note) {
    store.hold(tx, set);
    store
        .named(tx.sql(), name)
        .ifPresent(
            other -> {
              throw new Refused(KitProblem.NAME_TAKEN, name, other.number());
            });
    Map<Long, Component> found = register.components(tx.sql(), set.components());
    Map<Long, Kit> held = store.holding(tx.sql(), set.components());
    for (long number : set.components()) {
      Component part = found.get(number);
      if (part == null) {
        throw new Refused(KitProblem.NO_PART, number);
      }
      refuse(part, held.get(number));
    }
    return store.add(tx, name, set, note);
  }

  private static void refuse(Component part, @Nullable Kit other) {
    String words = Text.capital(part.inWords());
    if (other != null) {
      throw new Refused(KitProblem.IN_A_KIT, words, other.number());
    }
    if (part.state() != PartState.IN_STOCK) {
      throw new Refused(KitProblem.NOT_ON_A_SHELF, words, part.state().word());
    }
  }

  /**
   * Its parts go their own ways again.
   *
   * @throws Refused {@link KitProblem#DISSOLVED}
   */
  void dissolve(Tx tx, long id, String reason) {
    store.hold(tx, one(tx.sql(), id).set());
    Kit kit = one(tx.sql(), id);
    if (kit.dissolved() != null) {
      throw new Refused(KitProblem.DISSOLVED, kit.number(), kit.dissolved());
    }
    store.dissolve(tx, kit, reason);
    standings.refreshAtEnd(tx, fittedAt(tx.sql(), kit.set().components()).keySet());
  }

  Kit one(DSLContext sql, long id) {
    return store.one(sql, id).orElseThrow();
  }

  /**
   * The parts of the kit that people call so.
   *
   * @throws Refused if there is none, or it was dissolved
   */
  public PartSet standing(DSLContext sql, String number) {
    Kit kit =
        Optional.of(number)
            .filter(text -> text.matches("KIT-\\d{1,15}"))
            .flatMap(text -> store.one(sql, Long.parseLong(text.substring(4))))
            .orElseThrow(() -> new Refused(KitProblem.NO_KIT, number));
    if (kit.dissolved() != null) {
      throw new Refused(KitProblem.DISSOLVED, number, kit.dissolved());
    }
    return kit.set();
  }

  boolean exists(DSLContext sql, long id) {
    return store.one(sql, id).isPresent();
  }

  List<Kit> newest(DSLContext sql, boolean all, int most) {
    return store.newest(sql, all, most);
  }

  Map<Long, Kit> holding(DSLContext sql, Collection<Long> components) {
    return store.holding(sql, components);
  }

  /** The points at which these parts are fitted now, each with the tag. */
  private Map<Long, String> fittedAt(DSLContext sql, Collection<Long> components) {
    Map<Long, String> points = new TreeMap<>();
    for (long component : components) {
      for (Whereabouts where : register.now(sql, new ComponentId(component))) {
        points.put(where.point(), where.tag());
      }
    }
    return points;
  }

  /** Where the kit is, in words, and whether it is still together. */
  record Place(String words, boolean together) {}

  Place place(DSLContext sql, Kit kit) {
    List<Component> parts = List.copyOf(register.components(sql, kit.set().components()).values());
    Map<Long, String> points = fittedAt(sql, kit.set().components());
    long fitted = parts.stream().filter(part -> part.state() == PartState.FITTED).count();
    if (fitted == 0) {
      return lying(parts);
    }
    boolean whole = fitted == parts.size() && points.size() == 1;
    String tags = String.join(", ", points.values());
    return new Place(
        whole
            ? "fitted at " + tags
            : "taken apart: %s of %s parts fitted at %s".formatted(fitted, parts.size(), tags),
        whole);
  }

  private static Place lying(List<Component> parts) {
    Set<String> states = new TreeSet<>();
    parts.forEach(part -> states.add(part.state().word()));
    Set<String> shelves =
        parts.stream()
            .map(part -> part.facts().shelf().inWords())
            .filter(words -> !words.isEmpty())
            .collect(Collectors.toCollection(TreeSet::new));
    String where = shelves.isEmpty() ? "" : ": " + String.join("; ", shelves);
    return new Place(
        String.join(" and ", states) + where, states.size() == 1 && shelves.size() <= 1);
  }
}
