package loopwright.journal;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * For each row of one table, the first 128 bits of the hash that the last fact about it gives.
 * Numbers of rows lie close together, so hashes lie in pages: 16 bytes a row, 16 MB a million rows.
 */
final class LastHashes {
  private static final int PAGE_BITS = 8;
  private static final int PAGE = 1 << PAGE_BITS;

  private final Map<Long, long[]> pages = new HashMap<>();

  /** 128 bits of a hash in hex; never both zero in practice, zero stands for "no such row". */
  private record Half(long high, long low) {
    static Half of(String hex) {
      return new Half(
          Long.parseUnsignedLong(hex, 0, 16, 16), Long.parseUnsignedLong(hex, 16, 32, 16));
    }
  }

  boolean has(long key) {
    long[] page = pages.get(key >> PAGE_BITS);
    int at = at(key);
    return page != null && (page[at] != 0 || page[at + 1] != 0);
  }

  void put(long key, String hex) {
    Half half = Half.of(hex);
    long[] page = pages.computeIfAbsent(key >> PAGE_BITS, number -> new long[2 * PAGE]);
    page[at(key)] = half.high;
    page[at(key) + 1] = half.low;
  }

  void remove(long key) {
    long[] page = pages.get(key >> PAGE_BITS);
    if (page != null) {
      page[at(key)] = 0;
      page[at(key) + 1] = 0;
    }
  }

  boolean matches(long key, String hex) {
    Half half = Half.of(hex);
    long[] page = pages.get(key >> PAGE_BITS);
    int at = at(key);
    return page != null && page[at] == half.high && page[at + 1] == half.low;
  }

  /** The smallest key that is still here. */
  OptionalLong first() {
    return pages.entrySet().stream()
        .filter(page -> Arrays.stream(page.getValue()).anyMatch(part -> part != 0))
        .mapToLong(page -> firstIn(page.getKey(), page.getValue()))
        .min();
  }

  private static long firstIn(long number, long[] page) {
    int at = 0;
    while (page[at] == 0 && page[at + 1] == 0) {
      at += 2;
    }
    return (number << PAGE_BITS) + at / 2;
  }

  private static int at(long key) {
    return 2 * (int) (key & (PAGE - 1));
  }
}
