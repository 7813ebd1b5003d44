package loopwright.register;

import loopwright.db.Tx;

/**
 * Told in the same change when what is believed of a part changed, so that loops are judged anew.
 */
@FunctionalInterface
public interface FactsWatch {
  /** Nobody wants to know. */
  FactsWatch NOBODY = (tx, component) -> {};

  void factsChanged(Tx tx, ComponentId component);
}
