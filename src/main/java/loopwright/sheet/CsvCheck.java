package loopwright.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.problem.Refused;

/**
 * One pass over a file before its rows are read: is it text, in UTF-8, is every quoted cell closed,
 * and what separates its cells? Holds one buffer and the heading line, never the file.
 */
final class CsvCheck {
  private static final int BUFFER = 8_192;
  private static final int LONGEST_HEAD = 1_000_000;
  private static final char[] SEPARATORS = {',', ';', '\t'};
  private static final char MARK = '\uFEFF';

  /** A spreadsheet's own note before the headings; the line still counts as one. */
  private static final Pattern SEPARATOR_LINE = Pattern.compile("sep=([,;\t])(?=[\r\n])");

  private final String name;
  private final CharsetDecoder decoder =
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT);
  private final StringBuilder head = new StringBuilder();
  private boolean headIsWhole;
  private boolean headHasText;
  private boolean marked;
  private char separator = ',';
  private int note;

  private boolean anyText;
  private boolean quoted;
  private boolean cellBegins = true;
  private boolean justClosed;
  private int line = 1;
  private int opened = 1;

  private CsvCheck(String name) {
    this.name = name;
  }

  /** Opens the same bytes each time. */
  interface Source {
    InputStream open() throws IOException;
  }

  /**
   * @param skipped characters before the table's own: the byte-order mark and the separator's note
   */
  record Found(char separator, int skipped) {}

  /**
   * @throws Refused with a {@link SheetProblem} when it can't be read as a table
   */
  static Found of(String name, Source source) throws IOException {
    CsvCheck check = new CsvCheck(name);
    check.read(source);
    return check.found();
  }

  private void read(Source source) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(BUFFER);
    CharBuffer chars = CharBuffer.allocate(BUFFER);
    long before = 0;
    try (InputStream in = source.open()) {
      int read = in.read(bytes.array(), 0, BUFFER);
      while (read >= 0) {
        refuseControls(bytes.array(), bytes.position(), read, before);
        before += read;
        bytes.position(bytes.position() + read).flip();
        decode(bytes, chars, false);
        bytes.compact();
        read = in.read(bytes.array(), bytes.position(), bytes.remaining());
      }
    }
    decode(bytes.flip(), chars, true);
    wholeHead();
  }

  private void refuseControls(byte[] bytes, int from, int count, long before) {
    for (int i = from; i < from + count; i++) {
      byte b = bytes[i];
      if (b >= 0 && b < 0x20 && b != '\t' && b != '\r' && b != '\n') {
        throw new Refused(SheetProblem.NOT_TEXT, name, before + i - from + 1);
      }
    }
  }

  private void decode(ByteBuffer bytes, CharBuffer chars, boolean end) {
    CoderResult result;
    do {
      result = decoder.decode(bytes, chars, end);
      chars.flip();
      while (chars.hasRemaining()) {
        take(chars.get());
      }
      chars.clear();
      if (result.isError()) {
        int newlines = (int) head.chars().filter(c -> c == '\n').count();
        throw new Refused(SheetProblem.NOT_UTF8, name, headIsWhole ? line : newlines + 1);
      }
    } while (result.isOverflow());
  }

  private void take(char c) {
    if (headIsWhole) {
      weigh(c);
      return;
    }
    if (head.isEmpty() && !marked && c == MARK) {
      marked = true;
      return;
    }
    head.append(c);
    headHasText |= !Character.isWhitespace(c);
    if (headHasText && (c == '\n' || c == '\r') || head.length() >= LONGEST_HEAD) {
      wholeHead();
    }
  }

  private void wholeHead() {
    if (headIsWhole) {
      return;
    }
    headIsWhole = true;
    Matcher said = SEPARATOR_LINE.matcher(head);
    if (said.lookingAt()) {
      separator = said.group(1).charAt(0);
      note = said.end(1);
    } else {
      separator = commonest(head.toString().strip());
    }
    head.chars().forEach(c -> weigh((char) c));
  }

  /** The separator that stands most often in the heading line, outside quotes. */
  private static char commonest(String headings) {
    char best = ',';
    int most = 0;
    for (char candidate : SEPARATORS) {
      int seen = 0;
      boolean inQuotes = false;
      for (int i = 0; i < headings.length(); i++) {
        char c = headings.charAt(i);
        inQuotes ^= c == '"';
        if (c == candidate && !inQuotes) {
          seen++;
        }
      }
      if (seen > most) {
        most = seen;
        best = candidate;
      }
    }
    return best;
  }

  /** The library reads an unclosed cell to the end of the file; a shop would lose its last rows. */
  private void weigh(char c) {
    anyText |= !Character.isWhitespace(c);
    line += c == '\n' ? 1 : 0;
    if (justClosed) {
      cellBegins = c == '"';
      justClosed = false;
    }
    if (c == '"' && (quoted || cellBegins)) {
      opened = quoted ? opened : line;
      quoted = !quoted;
      justClosed = !quoted;
    } else if (!quoted) {
      cellBegins = c == separator || c == '\n' || c == '\r';
    }
  }

  private Found found() {
    if (!anyText) {
      throw new Refused(SheetProblem.EMPTY, name);
    }
    if (quoted) {
      throw new Refused(SheetProblem.BROKEN_QUOTES, name, opened);
    }
    return new Found(separator, note + (marked ? 1 : 0));
  }
}
