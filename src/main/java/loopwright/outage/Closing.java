package loopwright.outage;

import loopwright.db.Tx;

/** Told inside the change that closes an outage. */
@FunctionalInterface
public interface Closing {
  void closing(Tx tx, Outage outage);
}
