package loopwright.cause;

import java.util.List;

/** A cause, with all the ways in which it can hold. */
interface Hypothesis {
  Cause cause();

  /** Their shares add up to 1, or the list is empty where the cause can't be. */
  List<Variant> variants(Situation situation);
}
