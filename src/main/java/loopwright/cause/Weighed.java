package loopwright.cause;

/**
 * A variant after weighing.
 *
 * @param cause it belongs to
 * @param variant of it
 * @param tally of what fits
 * @param probability after measuring; before all variants are known, its weight
 */
record Weighed(Cause cause, Variant variant, Tally tally, double probability) {

  Weighed withProbability(double other) {
    return new Weighed(cause, variant, tally, other);
  }
}
