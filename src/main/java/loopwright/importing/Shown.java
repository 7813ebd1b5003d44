package loopwright.importing;

/** What came from a file, fit for a sentence. */
final class Shown {
  private static final int MOST = 60;

  private Shown() {}

  /** On one line and not longer than a sentence can bear. */
  static String cell(String text) {
    String line = text.replaceAll("\\s+", " ");
    return line.length() > MOST ? line.substring(0, MOST) + "…" : line;
  }
}
