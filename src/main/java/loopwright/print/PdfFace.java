package loopwright.print;

import java.util.List;

/**
 * A face of the fonts that we ship. Each comes in several files that cover different scripts; the
 * first that has a character writes it.
 */
public enum PdfFace {
  SANS("plex-sans", 400, List.of("latin", "latin-ext", "greek", "cyrillic")),
  SANS_BOLD("plex-sans", 600, List.of("latin", "latin-ext", "greek", "cyrillic")),
  MONO_BOLD("plex-mono", 600, List.of("latin", "latin-ext", "cyrillic"));

  /** Height of capitals and figures, in em, from the files themselves. */
  public static final double CAPITALS = 0.698;

  private final List<String> files;

  PdfFace(String family, int weight, List<String> scripts) {
    this.files =
        scripts.stream()
            .map(script -> "print/fonts/%s-%s-%s.ttf".formatted(family, script, weight))
            .toList();
  }

  /** Resources, the most likely first. */
  List<String> files() {
    return files;
  }
}
