package loopwright.loop;

import java.time.Instant;
import java.time.LocalDate;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * How a loop is judged now, as the first page and the plant pages tell it.
 *
 * @param urgency 0 is worst; {@link #NEEDS_NOBODY} needs nobody
 * @param rule the rule of the worst finding
 * @param headline what is wrong, one sentence
 * @param nextStep what somebody should do
 * @param ownerRole who
 * @param balance length balance; null when a length is not known
 * @param since when the verdict began; null when it was so from the start of the record
 * @param dueOn when the next calibration is due; null where interval or as-left is not on record
 * @param reviewAt when it becomes another one without anybody's doing; null if never
 */
public record Standing(
    long point,
    long train,
    int urgency,
    String verdict,
    String rule,
    String headline,
    String nextStep,
    String ownerRole,
    @Nullable Length balance,
    @Nullable Instant since,
    @Nullable LocalDate dueOn,
    @Nullable Instant reviewAt) {
  public static final int NEEDS_NOBODY = 9;
}
