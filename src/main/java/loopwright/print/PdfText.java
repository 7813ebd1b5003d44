package loopwright.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * Measures and writes text in one PDF document, with the fonts embedded (only the characters used).
 * Sizes and lengths are points of 1/72 inch.
 */
public final class PdfText {
  private final PDDocument document;
  private final Map<String, Loaded> loaded = new HashMap<>();
  private final Map<PdfFace, Map<Integer, Double>> advances = new EnumMap<>(PdfFace.class);
  private final Map<PdfFace, Map<Integer, Optional<Loaded>>> writers = new EnumMap<>(PdfFace.class);

  public PdfText(PDDocument document) {
    this.document = document;
  }

  private record Loaded(PDType0Font font, CmapLookup characters) {
    boolean has(int character) {
      return characters.getGlyphId(character) != 0;
    }
  }

  private record Run(Loaded by, String text) {}

  /** The first character that none of the face's files has. */
  public Optional<String> missing(PdfFace face, String text) {
    return text.codePoints()
        .filter(character -> by(face, character).isEmpty())
        .mapToObj(Character::toString)
        .findFirst();
  }

  /** Width of a line, points. */
  public double width(PdfFace face, String text, double size) {
    return text.codePoints().mapToDouble(character -> advance(face, character)).sum() * size;
  }

  /** How far the next character stands, in em; these fonts are written without kerning. */
  private double advance(PdfFace face, int character) {
    return advances
        .computeIfAbsent(face, any -> new HashMap<>())
        .computeIfAbsent(character, any -> measured(face, character));
  }

  private double measured(PdfFace face, int character) {
    try {
      Loaded by = by(face, character).orElseThrow(() -> noGlyph(character));
      return by.font.getStringWidth(Character.toString(character)) / 1000;
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
  }

  private static IllegalArgumentException noGlyph(int character) {
    return new IllegalArgumentException("no glyph for " + Character.toString(character));
  }

  /**
   * Writes a line.
   *
   * @param x where it begins
   * @param y of its base line
   */
  public void write(
      PDPageContentStream page, PdfFace face, double x, double y, double size, String text)
      throws IOException {
    page.beginText();
    page.newLineAtOffset((float) x, (float) y);
    for (Run run : runs(face, text)) {
      page.setFont(run.by.font, (float) size);
      page.showText(run.text);
    }
    page.endText();
  }

  /**
   * Lines of a text no wider than that; breaks at blanks, and within words that are too wide. What
   * fits on one line stays exactly as it is.
   */
  public List<String> wrapped(PdfFace face, String text, double size, double width) {
    if (text.isBlank()) {
      return List.of();
    }
    if (width(face, text, size) <= width) {
      return List.of(text);
    }
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.strip().split("\\s+")) {
      String more = line.isEmpty() ? word : line + " " + word;
      if (width(face, more, size) <= width) {
        line = more;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (width(face, line, size) > width && line.length() > 1) {
        int fits = fitting(face, line, size, width);
        lines.add(line.substring(0, fits));
        line = line.substring(fits);
      }
    }
    if (!line.isEmpty()) {
      lines.add(line);
    }
    return lines;
  }

  /** How much of a word fits; at least its first character. */
  private int fitting(PdfFace face, String word, double size, double width) {
    int fits = word.offsetByCodePoints(0, 1);
    double used = advance(face, word.codePointAt(0)) * size;
    while (fits < word.length()) {
      used += advance(face, word.codePointAt(fits)) * size;
      if (used > width) {
        break;
      }
      fits = word.offsetByCodePoints(fits, 1);
    }
    return fits;
  }

  private List<Run> runs(PdfFace face, String text) {
    List<Run> runs = new ArrayList<>();
    text.codePoints()
        .forEach(
            character -> {
              Loaded by = by(face, character).orElseThrow(() -> noGlyph(character));
              String one = Character.toString(character);
              Run last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
              if (last != null && last.by == by) {
                runs.set(runs.size() - 1, new Run(by, last.text + one));
              } else {
                runs.add(new Run(by, one));
              }
            });
    return runs;
  }

  private Optional<Loaded> by(PdfFace face, int character) {
    return writers
        .computeIfAbsent(face, any -> new HashMap<>())
        .computeIfAbsent(character, any -> writer(face, character));
  }

  private Optional<Loaded> writer(PdfFace face, int character) {
    return face.files().stream().map(this::loaded).filter(font -> font.has(character)).findFirst();
  }

  private Loaded loaded(String file) {
    return loaded.computeIfAbsent(file, this::load);
  }

  private Loaded load(String file) {
    try (InputStream in = PdfText.class.getClassLoader().getResourceAsStream(file)) {
      TrueTypeFont font =
          new TTFParser().parse(new RandomAccessReadBuffer(Objects.requireNonNull(in, file)));
      // joined letters would be read back, and copied, as nothing
      font.setEnableGsub(false);
      return new Loaded(PDType0Font.load(document, font, true), font.getUnicodeCmapLookup());
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
