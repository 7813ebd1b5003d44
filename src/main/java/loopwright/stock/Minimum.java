package loopwright.stock;

import java.time.Instant;
import loopwright.register.Sort;

/**
 * A decision how many usable parts of a sort are to lie in stock.
 *
 * @param id rises with each decision; the newest of a sort counts
 * @param least 0 when none is asked for any more
 */
record Minimum(long id, Sort sort, int least, String reason, String who, Instant since) {}
