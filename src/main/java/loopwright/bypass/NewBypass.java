package loopwright.bypass;

import java.time.Instant;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jspecify.annotations.Nullable;

/** A bypass about to be entered; see {@link Bypass}. */
public record NewBypass(
    long point,
    @Nullable Long outage,
    String siteNumber,
    String inhibited,
    String voteMeanwhile,
    String authoriser,
    String owner,
    Instant began,
    Instant expires) {

  /** Refuses missing texts and a bypass that expires before it began. */
  public NewBypass {
    siteNumber = Text.needed("the number under the site's procedure", siteNumber, 60);
    inhibited = Text.needed("the function that is inhibited", inhibited, 400);
    voteMeanwhile = Text.needed("how the group votes meanwhile", voteMeanwhile, 200);
    authoriser = Text.needed("who authorised it", authoriser, 120);
    owner = Text.needed("who answers for it", owner, 120);
    if (!began.isBefore(expires)) {
      throw new Refused(BypassProblem.ENDS_BEFORE);
    }
  }
}
