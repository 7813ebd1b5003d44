package loopwright.loop;

import java.time.Instant;
import java.util.List;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Something that needs somebody, as the first page lists it.
 *
 * @param verdict the word in the tag: refused, unknown, attention
 * @param urgency 0 is worst; see {@link Standing}
 * @param href where to act
 * @param train number of the train; null where it belongs to none
 * @param since when it began; null when nobody knows
 * @param who the role that acts
 */
public record Need(
    String verdict,
    int urgency,
    String href,
    String where,
    String place,
    @Nullable Long train,
    String why,
    @Nullable Instant since,
    String who,
    String nextStep) {

  /** A feature whose records may need somebody, beside the loops themselves. */
  public interface Source {
    List<Need> needs(DSLContext sql, Instant now);
  }
}
