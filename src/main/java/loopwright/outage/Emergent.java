package loopwright.outage;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.time.SiteMoment;

/**
 * Work on a loop that was found to be needed while its outage was under way.
 *
 * @param works that were added
 * @param foundBy who found it
 * @param who entered it
 * @param change that entered it; a later change has a greater number
 */
public record Emergent(
    long point,
    String tag,
    List<Work> works,
    String foundBy,
    Instant foundAt,
    String reason,
    String who,
    long change) {
  public Emergent {
    works = List.copyOf(works);
  }

  /** What is said of one before it is kept. */
  public record Said(long point, List<Work> works, String foundBy, Instant foundAt, String reason) {
    public Said {
      works = List.copyOf(works);
    }
  }

  /** {@code found by N. Ame, 2026-03-01 09:40: reads low}. */
  public String found(ZoneId zone) {
    return "found by %s, %s: %s".formatted(foundBy, SiteMoment.shown(foundAt, zone), reason);
  }

  /** With the work. */
  public String inWords(ZoneId zone) {
    return works.stream().map(Work::label).collect(Collectors.joining(", ")) + "; " + found(zone);
  }
}
