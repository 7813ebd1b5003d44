package loopwright.register;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.matching.KnownLength;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jooq.DSLContext;

/** What lies on the shelves and may be fitted. */
public final class Stock {
  private final StockStore store = new StockStore();

  /**
   * A part in stock.
   *
   * @param family code
   */
  public record Lying(
      ComponentId id,
      String label,
      PartKind kind,
      String family,
      KnownLength length,
      Shelf shelf) {}

  /** Parts in stock of those families whose length is known, by label. */
  public List<Lying> lying(DSLContext sql, Collection<String> families) {
    return families.isEmpty() ? List.of() : store.lying(sql, families);
  }

  /**
   * Parts in stock that only their serials tell apart.
   *
   * @param family code
   * @param first one of them; one whose length is proved, if there is any
   */
  public record Alike(
      PartKind kind, String family, Length length, ComponentId first, int howMany) {}

  /** What sorts of parts of those families lie in stock with known length. */
  public List<Alike> alike(DSLContext sql, Collection<String> families) {
    return families.isEmpty() ? List.of() : store.alike(sql, families);
  }

  /**
   * How many parts of one sort there are.
   *
   * @param inStock usable and on a shelf
   * @param quarantined not usable until somebody says so
   */
  public record Count(Sort sort, int inStock, int fitted, int quarantined) {}

  /** Every sort of probe, cable and driver of those families; scrapped parts don't count. */
  public List<Count> counts(DSLContext sql, Collection<FamilyId> families) {
    return families.isEmpty() ? List.of() : store.counts(sql, families);
  }

  /**
   * How many of each sort were put into loops since then: by assemblies, and where a survey found
   * one in place of another part.
   */
  public Map<Sort, Integer> putIn(DSLContext sql, Collection<FamilyId> families, Instant since) {
    return families.isEmpty() ? Map.of() : store.putIn(sql, families, since);
  }

  /** Parts in stock that count for no sort, because family or length isn't known. */
  public int ofNoSort(DSLContext sql) {
    return store.ofNoSort(sql);
  }
}
