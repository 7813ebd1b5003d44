package loopwright.problem;

/** Texts as records keep them: blanks around them dropped, length and characters checked. */
public final class Text {
  private Text() {}

  /**
   * A text that must be there.
   *
   * @param what how a sentence names it: {@code the tag}
   * @throws Refused with a {@link TextProblem} if it is missing, too long or unreadable
   */
  public static String needed(String what, String text, int most) {
    String kept = kept(what, text, most);
    if (kept.isEmpty()) {
      throw new Refused(TextProblem.MISSING, what);
    }
    return kept;
  }

  /** A text that may be empty. */
  public static String kept(String what, String text, int most) {
    String kept = text.strip();
    if (kept.length() > most) {
      throw new Refused(TextProblem.TOO_LONG, capital(what), kept.length(), most);
    }
    if (kept.chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t')) {
      throw new Refused(TextProblem.UNREADABLE, capital(what));
    }
    return kept;
  }

  /** The first letter as a capital, for the start of a sentence; an empty text stays so. */
  public static String capital(String words) {
    return words.isEmpty() ? "" : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
