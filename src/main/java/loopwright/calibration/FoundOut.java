package loopwright.calibration;

import loopwright.db.Tx;

/** Told in the same change when an as-found is kept that is out of tolerance or without a curve. */
@FunctionalInterface
public interface FoundOut {
  /** Nobody wants to know. */
  FoundOut NOBODY = (tx, calibration, point) -> {};

  /**
   * @param calibration number of its row
   */
  void outOfTolerance(Tx tx, long calibration, long point);
}
