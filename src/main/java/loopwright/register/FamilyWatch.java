package loopwright.register;

import loopwright.db.Tx;

/**
 * Told in the same change when a family is new or says something else, or a pair of families that
 * it belongs to came or went.
 */
@FunctionalInterface
public interface FamilyWatch {
  /** Nobody wants to know. */
  FamilyWatch NOBODY = (tx, family) -> {};

  void familyChanged(Tx tx, FamilyId family);
}
