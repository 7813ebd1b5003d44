package loopwright.pack;

import java.time.Instant;
import java.util.List;

/**
 * A pack as it was handed out.
 *
 * @param head what its first page says
 * @param hash of the head and of the hashes of its loops
 */
record Revision(
    long id, long outage, int number, String by, Instant at, String note, Head head, String hash) {

  /** What the first page says; all text, as printed. */
  record Head(
      String outage,
      String name,
      String site,
      String window,
      String trains,
      String team,
      List<String> cautions) {
    Head {
      cautions = List.copyOf(cautions);
    }
  }

  /**
   * A loop of it.
   *
   * @param id of the row
   * @param place counted from 1, in the order of a walk
   */
  record Loop(long id, int place, long point, LoopSheet sheet, String hash) {}
}
