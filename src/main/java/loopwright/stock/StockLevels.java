package loopwright.stock;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyId;
import loopwright.register.OfferedLength;
import loopwright.register.Sort;
import loopwright.register.Stock;
import org.jooq.DSLContext;

/** How many spares there are of each sort, and how many there are to be. */
public final class StockLevels {
  private static final Duration LOOKED_BACK = Duration.ofDays(365L * Suggestion.YEARS + 1);
  private static final Comparator<Level> ORDER =
      Comparator.comparingInt(Level::missing)
          .reversed()
          .thenComparing(Level::family)
          .thenComparing(level -> level.count().sort().kind())
          .thenComparing(level -> level.count().sort().length());

  private final FamilyBook families;
  private final Stock stock = new Stock();
  private final MinimumStore store = new MinimumStore();

  public StockLevels(FamilyBook families) {
    this.families = families;
  }

  /** Every sort of those families that there is or is to be; what is missing first. */
  List<Level> levels(DSLContext sql, Collection<Family> of, Instant now) {
    Map<FamilyId, String> codes = of.stream().collect(Collectors.toMap(Family::id, Family::code));
    Map<Sort, Minimum> minima = store.now(sql);
    Map<Sort, Integer> used = stock.putIn(sql, codes.keySet(), now.minus(LOOKED_BACK));
    Map<Sort, Stock.Count> counts =
        stock.counts(sql, codes.keySet()).stream()
            .collect(Collectors.toMap(Stock.Count::sort, Function.identity()));
    Set<Sort> sorts = new HashSet<>(counts.keySet());
    minima.keySet().stream().filter(sort -> codes.containsKey(sort.family())).forEach(sorts::add);
    return sorts.stream()
        .map(
            sort -> {
              Stock.Count count = counts.getOrDefault(sort, new Stock.Count(sort, 0, 0, 0));
              return new Level(
                  codes.getOrDefault(sort.family(), ""),
                  count,
                  new Suggestion(count.fitted(), used.getOrDefault(sort, 0)),
                  minima.get(sort));
            })
        .sorted(ORDER)
        .toList();
  }

  /** Sorts of which less lies in stock than is to. */
  List<Level> missing(DSLContext sql, Instant now) {
    Set<FamilyId> concerned = new HashSet<>();
    store.now(sql).values().stream()
        .filter(minimum -> minimum.least() > 0)
        .forEach(minimum -> concerned.add(minimum.sort().family()));
    if (concerned.isEmpty()) {
      return List.of();
    }
    List<Family> of =
        families.all(sql).stream().filter(family -> concerned.contains(family.id())).toList();
    return levels(sql, of, now).stream().filter(level -> level.missing() > 0).toList();
  }

  /** Every decision about a sort, the newest first. */
  List<Minimum> story(DSLContext sql, Sort sort) {
    return store.story(sql, sort);
  }

  int ofNoSort(DSLContext sql) {
    return stock.ofNoSort(sql);
  }

  /**
   * Decides how many of a sort are to lie in stock.
   *
   * @param seen the newest decision that the person saw; 0 for none
   * @throws Refused if the family offers no such part, or somebody decided meanwhile
   */
  void decide(Tx tx, Sort sort, int least, String reason, long seen) {
    Family family = families.family(tx.sql(), sort.family()).orElseThrow();
    refuseNotOffered(family, sort);
    List<Minimum> story = store.story(tx.sql(), sort);
    if (seen != (story.isEmpty() ? 0 : story.get(0).id())) {
      throw new Refused(StockProblem.MOVED_ON);
    }
    store.add(tx, sort, least, Text.needed("the reason", reason, 400));
  }

  /** Of a length that nobody sells no part can ever lie in stock. */
  static void refuseNotOffered(Family family, Sort sort) {
    PartKind kind = sort.kind();
    if (kind != PartKind.PROBE && kind != PartKind.CABLE && kind != PartKind.DRIVER) {
      throw new Refused(StockProblem.NOT_COUNTED, kind.word());
    }
    List<OfferedLength> offered = family.details().lengthsOf(kind);
    if (!offered.isEmpty()
        && offered.stream().noneMatch(one -> one.length().equals(sort.length()))) {
      throw new Refused(
          StockProblem.NOT_OFFERED,
          family.code(),
          kind.word(),
          sort.length().inMetres(),
          offered.stream().map(one -> one.length().inMetres()).collect(Collectors.joining(", ")));
    }
  }
}
