package loopwright.register;

import loopwright.problem.Refused;

/**
 * A place in a list, between two parts.
 *
 * @param backward whether the page before that part is asked for, instead of the one after it
 * @param labelKey of the part
 * @param number of the part
 */
public record Cursor(boolean backward, String labelKey, long number) {

  static Cursor after(Component part, String labelKey) {
    return new Cursor(false, labelKey, part.id().number());
  }

  static Cursor before(Component part, String labelKey) {
    return new Cursor(true, labelKey, part.id().number());
  }

  /** As it stands in an address. */
  public String text() {
    return number + "~" + labelKey;
  }

  /**
   * Reads what {@link #text} wrote.
   *
   * @throws Refused {@link RegisterProblem#BAD_PLACE_IN_LIST} for anything else
   */
  public static Cursor read(boolean backward, String text) {
    int mark = text.indexOf('~');
    try {
      return new Cursor(backward, text.substring(mark + 1), Long.parseLong(text, 0, mark, 10));
    } catch (NumberFormatException | IndexOutOfBoundsException unreadable) {
      Refused refused = new Refused(RegisterProblem.BAD_PLACE_IN_LIST);
      refused.initCause(unreadable);
      throw refused;
    }
  }
}
