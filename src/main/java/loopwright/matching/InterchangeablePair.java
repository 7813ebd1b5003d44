package loopwright.matching;

import java.util.Locale;

/**
 * Two families that the shop has entered as interchangeable, in either direction.
 *
 * @param saidBy who vouches for it
 */
public record InterchangeablePair(String first, String second, String saidBy) {

  public boolean joins(String one, String other) {
    return same(first, one) && same(second, other) || same(first, other) && same(second, one);
  }

  private static boolean same(String a, String b) {
    return a.toLowerCase(Locale.ROOT).equals(b.toLowerCase(Locale.ROOT));
  }
}
