package loopwright.loop;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import loopwright.matching.Calibration;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What calibrations say of loops; given by the feature that keeps them. */
public interface AsLeftFacts {

  /**
   * The latest as-left that concerns each loop, measured by the viewpoint's moment and known then.
   *
   * @return by point; a loop without any is not in it
   */
  Map<Long, AsLeft> latest(DSLContext sql, Collection<Fitted> loops, Viewpoint viewpoint);

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
      @Nullable Double averageScaleFactor) {}
}
