package loopwright.pack;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * A pack as it was handed out.
 *
 * @param head what its first page says
 * @param hash of the head and of the hashes of its loops
 */
record Revision(
    long id, long outage, int number, String by, Instant at, String note, Head head, String hash) {

  /**
   * What the first page says; all text, as printed.
   *
   * @param hours of work; empty when nobody reckoned
   * @param standards in use, with until when their certificates hold
   */
  record Head(
      String outage,
      String name,
      String site,
      String window,
      String trains,
      String team,
      List<String> cautions,
      String hours,
      List<String> standards) {
    Head {
      cautions = List.copyOf(cautions);
      // heads frozen before there was room for them
      hours = Objects.requireNonNullElse(hours, "");
      standards = List.copyOf(Objects.requireNonNullElse(standards, List.of()));
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
