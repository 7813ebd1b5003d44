package loopwright.register;

import static loopwright.db.gen.Tables.COMPONENT;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Capitals;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.units.Length;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.SortField;
import org.jooq.TableField;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/**
 * Questions to the table of parts that stay fast when it is long: each is led by one index, and the
 * columns asked for stand in the order too, or the engine would sort instead of reading on.
 */
final class SearchStore {
  private static final int MOST_MAKERS = 200;

  /** A part and the key by which the list is ordered. */
  record Hit(Component part, String labelKey) {
    Cursor after() {
      return Cursor.after(part, labelKey);
    }

    Cursor before() {
      return Cursor.before(part, labelKey);
    }
  }

  /** In the order asked for; backward from the cursor if that looks backward. */
  List<Hit> page(DSLContext sql, ComponentQuery query, @Nullable Cursor at, int most) {
    boolean backward = at != null && at.backward();
    boolean falling = (query.order() != ComponentQuery.Order.LABEL) != backward;
    boolean byLabel = query.order() != ComponentQuery.Order.NEWEST;
    Condition which = condition(sql, query);
    if (at != null) {
      which = which.and(byLabel ? beyondLabel(at, falling) : beyondNumber(at, falling));
    }
    List<SortField<?>> order = new ArrayList<>();
    if (byLabel) {
      leading(query).forEach(field -> order.add(sorted(field, falling)));
      order.add(sorted(COMPONENT.LABEL_KEY, falling));
    }
    order.add(sorted(COMPONENT.ID, falling));
    return sql.selectFrom(COMPONENT)
        .where(which)
        .orderBy(order)
        .limit(most)
        .fetch(row -> new Hit(ComponentStore.component(row), row.getLabelKey()));
  }

  private static SortField<?> sorted(Field<?> field, boolean falling) {
    return falling ? field.desc() : field.asc();
  }

  private static Condition beyondLabel(Cursor at, boolean falling) {
    Field<String> label = COMPONENT.LABEL_KEY;
    return falling
        ? label.le(at.labelKey()).and(label.lt(at.labelKey()).or(COMPONENT.ID.lt(at.number())))
        : label.ge(at.labelKey()).and(label.gt(at.labelKey()).or(COMPONENT.ID.gt(at.number())));
  }

  private static Condition beyondNumber(Cursor at, boolean falling) {
    return falling ? COMPONENT.ID.lt(at.number()) : COMPONENT.ID.gt(at.number());
  }

  /** The equality columns of the index that narrows most. */
  private static List<Field<?>> leading(ComponentQuery query) {
    if (query.family() != null) {
      return List.of(COMPONENT.FAMILY_ID);
    }
    if (query.length() != null) {
      return List.of(COMPONENT.LENGTH_M);
    }
    if (query.kind() != null && query.state() != null) {
      return List.of(COMPONENT.KIND, COMPONENT.STATE);
    }
    if (!query.maker().isEmpty()) {
      return List.of(COMPONENT.MAKER);
    }
    if (query.state() != null) {
      return List.of(COMPONENT.STATE);
    }
    return query.kind() == null ? List.of() : List.of(COMPONENT.KIND);
  }

  private static Condition condition(DSLContext sql, ComponentQuery query) {
    Condition which = DSL.noCondition();
    if (query.kind() != null) {
      which = which.and(COMPONENT.KIND.eq(query.kind().word()));
    }
    if (query.family() != null) {
      which = which.and(COMPONENT.FAMILY_ID.eq(query.family().number()));
    }
    if (query.length() != null) {
      which = which.and(COMPONENT.LENGTH_M.eq(FactRows.metres(query.length())));
    }
    if (query.state() != null) {
      which = which.and(COMPONENT.STATE.eq(query.state().word()));
    }
    if (!query.maker().isEmpty()) {
      which = which.and(COMPONENT.MAKER.eq(query.maker()));
    }
    return which.and(serial(sql, query.serial()));
  }

  private static Condition serial(DSLContext sql, String typed) {
    if (typed.isEmpty()) {
      return DSL.noCondition();
    }
    return typed.startsWith("*")
        ? COMPONENT.LABEL_KEY.contains(Capitals.of(sql, typed.substring(1)))
        : beginning(Capitals.of(sql, typed));
  }

  /** The bound beside the pattern lets the index begin at the right place. */
  private static Condition beginning(String key) {
    return COMPONENT.LABEL_KEY.ge(key).and(COMPONENT.LABEL_KEY.startsWith(key));
  }

  List<Component> lookup(
      DSLContext sql,
      PartKind kind,
      String beginning,
      @Nullable FamilyId family,
      @Nullable Length length,
      int most) {
    Condition which = COMPONENT.KIND.eq(kind.word());
    if (!beginning.isEmpty()) {
      which = which.and(beginning(Capitals.of(sql, beginning)));
    }
    Map<Long, Component> found = new LinkedHashMap<>();
    Condition wanted = wanted(family, length);
    add(found, sql, which.and(COMPONENT.STATE.eq(PartState.IN_STOCK.word())).and(wanted), most);
    add(found, sql, which.and(COMPONENT.STATE.eq(PartState.IN_STOCK.word())), most);
    add(found, sql, which.and(COMPONENT.STATE.eq(PartState.FITTED.word())), most);
    add(found, sql, which.and(COMPONENT.STATE.eq(PartState.QUARANTINED.word())), most);
    return List.copyOf(found.values());
  }

  private static Condition wanted(@Nullable FamilyId family, @Nullable Length length) {
    Condition wanted = DSL.noCondition();
    if (family != null) {
      wanted = wanted.and(COMPONENT.FAMILY_ID.eq(family.number()));
    }
    if (length != null) {
      wanted = wanted.and(COMPONENT.LENGTH_M.eq(FactRows.metres(length)));
    }
    return wanted;
  }

  private static void add(Map<Long, Component> found, DSLContext sql, Condition which, int most) {
    if (found.size() >= most) {
      return;
    }
    List<Component> more =
        sql.selectFrom(COMPONENT)
            .where(which)
            .orderBy(COMPONENT.KIND, COMPONENT.STATE, COMPONENT.LABEL_KEY, COMPONENT.ID)
            .limit(most)
            .fetch(ComponentStore::component);
    for (Component part : more) {
      if (found.size() < most) {
        found.putIfAbsent(part.id().number(), part);
      }
    }
  }

  /** Labels that begin with the text, then labels, makers and models that hold it. */
  List<Component> holding(DSLContext sql, String text, int most) {
    String key = Capitals.of(sql, text);
    Map<Long, Component> found = new LinkedHashMap<>();
    add(found, sql, most, beginning(key));
    add(found, sql, most, COMPONENT.LABEL_KEY.contains(key));
    add(
        found,
        sql,
        most,
        DSL.upper(COMPONENT.MAKER).contains(key).or(DSL.upper(COMPONENT.MODEL).contains(key)));
    return List.copyOf(found.values());
  }

  private static void add(Map<Long, Component> found, DSLContext sql, int most, Condition which) {
    if (found.size() < most) {
      sql
          .selectFrom(COMPONENT)
          .where(which)
          .orderBy(COMPONENT.LABEL_KEY, COMPONENT.ID)
          .limit(most)
          .fetch(ComponentStore::component)
          .stream()
          .filter(part -> !found.containsKey(part.id().number()))
          .limit(most - found.size())
          .forEach(part -> found.put(part.id().number(), part));
    }
  }

  /** Steps from one maker to the next in the index instead of reading every part. */
  List<String> makers(DSLContext sql) {
    List<String> makers = new ArrayList<>();
    TableField<?, String> maker = COMPONENT.MAKER;
    String last = "";
    while (makers.size() < MOST_MAKERS) {
      String next =
          sql.select(DSL.min(maker)).from(COMPONENT).where(maker.gt(last)).fetchSingle().value1();
      if (next == null) {
        return makers;
      }
      makers.add(next);
      last = next;
    }
    return makers;
  }
}
