package loopwright.loop;

import java.time.Instant;
import java.util.List;
import loopwright.time.Span;
import org.jooq.DSLContext;

/** Calibrations taken at a point; given by the feature that keeps them. */
public interface CurvesTaken {

  /** Those measured within that range of moments, the newest first. */
  List<Taken> takenAt(DSLContext sql, long point, Span span);

  /**
   * A calibration of the point.
   *
   * @param number by which people call it
   * @param stage as found, as left …
   * @param fingerprint of the combination it belongs to, see {@link Combinations#fingerprint}
   */
  record Taken(String number, String stage, Instant measuredAt, String fingerprint) {}
}
