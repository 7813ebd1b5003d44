package loopwright.exposure;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The question that an as-found out of tolerance opens, or a record that a standard's error turned:
 * what did it do to protection?
 *
 * @param calibration number of the as-found
 * @param foundAt when it was measured
 * @param imported whether the as-found was brought in with a file
 * @param standard code of the standard whose error opened it; null where the record itself did
 * @param told what was said of that error then
 * @param signOff empty while it is open
 */
record ImpactReview(
    long id,
    String calibration,
    long point,
    String tag,
    Instant foundAt,
    boolean imported,
    Instant openedAt,
    @Nullable String standard,
    List<String> told,
    Optional<SignOff> signOff) {

  /**
   * How it was closed.
   *
   * @param told what the page said of set points then
   */
  record SignOff(String who, Instant at, ImpactOutcome outcome, String words, List<String> told) {}

  /** As people call it. */
  String number() {
    return "I-" + id;
  }

  boolean isOpen() {
    return signOff.isEmpty();
  }
}
