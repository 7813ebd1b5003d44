package loopwright.db;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** A long list of keys, cut so that no statement grows without limit. */
public final class Chunks {
  private Chunks() {}

  /** In the order of the collection, the last one possibly shorter. */
  public static <T> List<List<T>> of(Collection<T> all, int most) {
    List<T> list = List.copyOf(all);
    List<List<T>> chunks = new ArrayList<>();
    for (int from = 0; from < list.size(); from += most) {
      chunks.add(list.subList(from, Math.min(from + most, list.size())));
    }
    return chunks;
  }
}
