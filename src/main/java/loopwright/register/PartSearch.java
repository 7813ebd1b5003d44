package loopwright.register;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Finds parts among very many: lists by keyset, choices while typing, the find box. */
public final class PartSearch {
  /** Parts on one page. */
  public static final int PAGE = 50;

  /** Choices offered while somebody types. */
  public static final int CHOICES = 12;

  private final SearchStore store = new SearchStore();
  private final FamilyStore families = new FamilyStore();
  private final WhereaboutsStore whereabouts = new WhereaboutsStore();

  /**
   * One page of the parts that are asked for.
   *
   * @param at where the page begins or ends; null for the first page
   */
  public PartsPage page(DSLContext sql, ComponentQuery query, @Nullable Cursor at) {
    boolean backward = at != null && at.backward();
    List<SearchStore.Hit> hits = new ArrayList<>(store.page(sql, query, at, PAGE + 1));
    boolean more = hits.size() > PAGE;
    if (more) {
      hits.remove(PAGE);
    }
    if (backward) {
      Collections.reverse(hits);
    }
    boolean hasEarlier = backward ? more : at != null;
    boolean hasLater = backward || more;
    return new PartsPage(
        rows(sql, hits.stream().map(SearchStore.Hit::part).toList()),
        hasEarlier && !hits.isEmpty() ? hits.get(0).before() : null,
        hasLater && !hits.isEmpty() ? hits.get(hits.size() - 1).after() : null);
  }

  /**
   * What a person may mean who has typed the beginning of a serial: parts in stock first, among
   * them those of the wanted family and length.
   *
   * @param family preferred, not demanded
   * @param length preferred, not demanded
   */
  public List<PartRow> lookup(
      DSLContext sql,
      PartKind kind,
      String beginning,
      @Nullable FamilyId family,
      @Nullable Length length) {
    return rows(sql, store.lookup(sql, kind, beginning.strip(), family, length, CHOICES));
  }

  /** Parts whose serial, shop number, maker or model holds that text, best first. */
  public List<PartRow> holding(DSLContext sql, String text, int most) {
    return rows(sql, store.holding(sql, text.strip(), most));
  }

  /** Every maker, for a filter. */
  public List<String> makers(DSLContext sql) {
    return store.makers(sql);
  }

  /** Parts with their families' codes and where they are. */
  public List<PartRow> rows(DSLContext sql, List<Component> parts) {
    Map<Long, String> codes = families.codes(sql);
    Map<Long, List<Whereabouts>> now =
        whereabouts.now(sql, parts.stream().map(part -> part.id().number()).toList());
    return parts.stream()
        .map(
            part ->
                new PartRow(
                    part,
                    code(part.facts().family(), codes),
                    now.getOrDefault(part.id().number(), List.of())))
        .toList();
  }

  private static String code(@Nullable FamilyId family, Map<Long, String> codes) {
    return family == null ? "" : codes.getOrDefault(family.number(), "");
  }
}
