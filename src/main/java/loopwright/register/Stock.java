package loopwright.register;

import java.util.Collection;
import java.util.List;
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
}
