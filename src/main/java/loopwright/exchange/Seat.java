package loopwright.exchange;

import loopwright.units.Length;

/**
 * The place that a loop has for one kind of part, with the part that sits in it now.
 *
 * @param loop that it belongs to
 * @param part that sits there, whose length is known
 */
record Seat(LoopLengths loop, FittedPart part) {
  Length length() {
    Length length = part.length();
    if (length == null) {
      throw new IllegalStateException("the length of " + part.words() + " is not known");
    }
    return length;
  }

  String train() {
    return loop.train();
  }

  boolean inBalanceWith(Length other) {
    return loop.matches(loop.balanceWith(part, other));
  }
}
