package loopwright.plant;

import loopwright.db.Tx;

/**
 * Told in the same change when a point is new, moved, retired or otherwise changed, or a channel
 * that it feeds is.
 */
@FunctionalInterface
public interface PointWatch {
  /** Nobody wants to know. */
  PointWatch NOBODY = (tx, point) -> {};

  void pointChanged(Tx tx, PointId point);
}
