package loopwright.loop;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.matching.Calibration;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What calibrations say of loops; given by the feature that keeps them. */
public interface AsLeftFacts {

  /**
   * The latest as-lefts that concern each loop, measured by the viewpoint's moment and known then:
   * the last one taken at the point of what was fitted there, and the last one of the combination
   * if that was taken elsewhere.
   *
   * @return by point, the newest first; a loop without any is not in it
   */
  Map<Long, List<AsLeft>> latest(DSLContext sql, Collection<Fitted> loops, Viewpoint viewpoint);

  /**
   * A loop as it is fitted.
   *
   * @param fingerprint of the combination, see {@link Combinations#fingerprint}
   */
  record Fitted(long point, String fingerprint) {}

  /**
   * The latest as-left of the point or of its combination.
   *
   * @param fingerprint of the combination it was taken with
   * @param measuredOn the day, in UTC
   * @param takenHere at the point, of what was fitted there
   * @param reservations why it may not count for this loop although the parts are the same, each a
   *     clause for after "but"
   * @param targetAlloy that it was taken on; empty if not said
   * @param averageScaleFactor end to end, mV/µm; null without a curve
   */
  record AsLeft(
      long calibration,
      String fingerprint,
      LocalDate measuredOn,
      java.time.Instant measuredAt,
      boolean takenHere,
      Calibration.Outcome outcome,
      String targetAlloy,
      @Nullable Double averageScaleFactor,
      List<String> reservations) {
    public AsLeft {
      reservations = List.copyOf(reservations);
    }
  }
}
