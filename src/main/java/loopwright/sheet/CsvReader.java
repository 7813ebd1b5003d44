package loopwright.sheet;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.problem.Refused;

/**
 * Reads CSV as shops save it: UTF-8 with or without byte-order mark, separated by comma, semicolon
 * or tab (found in the heading line, or named in a line {@code sep=;} before it), quoted cells with
 * line breaks inside (RFC 4180 grammar), blank lines and trailing empty columns passed over.
 * Anything that can't be read that way is refused with the place and the remedy; nothing is guessed
 * or dropped.
 */
public final class CsvReader {
  private static final int MEGABYTE = 1_000_000;
  private static final char[] SEPARATORS = {',', ';', '\t'};

  /** A spreadsheet's own note before the headings; the line still counts as one. */
  private static final Pattern SEPARATOR_LINE = Pattern.compile("sep=([,;\t])(?=[\r\n])");

  private final int mostMegabytes;

  /**
   * @param mostMegabytes size above which a file is refused unread
   */
  public CsvReader(int mostMegabytes) {
    this.mostMegabytes = mostMegabytes;
  }

  /**
   * @throws Refused with a {@link SheetProblem} when the file can't be read as a table
   */
  public Table read(Path file) {
    return read(file, CsvReader::refuse);
  }

  /**
   * Reads on past a row or heading that can't be read, so that everything wrong is found at once.
   *
   * @param complaints takes all that is wrong; a table is fit for use only if nothing came of it
   * @return empty when the file can't be read as a table at all
   */
  public Optional<Table> read(Path file, Complaints complaints) {
    return collecting(complaints, each -> read(file, each));
  }

  /** As {@link #read(Path, Complaints)}, from bytes. */
  public Optional<Table> read(String name, byte[] bytes, Complaints complaints) {
    return collecting(complaints, each -> read(name, bytes, each));
  }

  private static Optional<Table> collecting(
      Complaints complaints, Function<Consumer<Refused>, Table> reading) {
    try {
      return Optional.of(reading.apply(complaints::add));
    } catch (Refused refused) {
      complaints.add(refused);
      return Optional.empty();
    }
  }

  private static void refuse(Refused refused) {
    throw refused;
  }

  private Table read(Path file, Consumer<Refused> each) {
    String name = String.valueOf(file.getFileName());
    try {
      if (!Files.isRegularFile(file)) {
        throw new Refused(SheetProblem.NO_FILE, file);
      }
      refuseTooLarge(name, Files.size(file));
      return read(name, Files.readAllBytes(file), each);
    } catch (IOException unreadable) {
      Refused refused = new Refused(SheetProblem.NO_FILE, file);
      refused.initCause(unreadable);
      throw refused;
    }
  }

  /**
   * @param name shown in messages
   * @throws Refused with a {@link SheetProblem} when the bytes can't be read as a table
   */
  public Table read(String name, byte[] bytes) {
    return read(name, bytes, CsvReader::refuse);
  }

  private Table read(String name, byte[] bytes, Consumer<Refused> each) {
    refuseTooLarge(name, bytes.length);
    String text = text(name, bytes);
    if (text.isBlank()) {
      throw new Refused(SheetProblem.EMPTY, name);
    }
    Matcher said = SEPARATOR_LINE.matcher(text);
    char separator = said.lookingAt() ? said.group(1).charAt(0) : separator(text);
    String below = said.lookingAt() ? text.substring(said.end(1)) : text;
    List<CsvRecord> records = records(name, below, separator);
    return table(name, separator, records, each);
  }

  private void refuseTooLarge(String name, long size) {
    if (size > (long) mostMegabytes * MEGABYTE) {
      throw new Refused(
          SheetProblem.TOO_LARGE, name, (size + MEGABYTE - 1) / MEGABYTE, mostMegabytes);
    }
  }

  private static String text(String name, byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      byte b = bytes[i];
      if (b >= 0 && b < 0x20 && b != '\t' && b != '\r' && b != '\n') {
        throw new Refused(SheetProblem.NOT_TEXT, name, i + 1);
      }
    }
    ByteBuffer in = ByteBuffer.wrap(bytes);
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(in)
              .toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException notUtf8) {
      Refused refused = new Refused(SheetProblem.NOT_UTF8, name, lineOf(bytes, in.position()));
      refused.initCause(notUtf8);
      throw refused;
    }
  }

  private static int lineOf(byte[] bytes, int position) {
    int line = 1;
    for (int i = 0; i < position; i++) {
      if (bytes[i] == '\n') {
        line++;
      }
    }
    return line;
  }

  /** The separator that stands most often in the heading line, outside quotes. */
  private static char separator(String text) {
    String headings = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    char best = ',';
    int most = 0;
    for (char candidate : SEPARATORS) {
      int seen = 0;
      boolean quoted = false;
      for (int i = 0; i < headings.length(); i++) {
        char c = headings.charAt(i);
        quoted ^= c == '"';
        if (c == candidate && !quoted) {
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

  private static List<CsvRecord> records(String name, String text, char separator) {
    refuseUnclosedQuote(name, text, separator);
    List<CsvRecord> records = new ArrayList<>();
    try (de.siegmar.fastcsv.reader.CsvReader<CsvRecord> csv =
        de.siegmar.fastcsv.reader.CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(true)
            .allowMissingFields(true)
            .allowExtraFields(true)
            .ofCsvRecord(text)) {
      csv.forEach(records::add);
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
    return records;
  }

  /** The library reads an unclosed cell to the end of the file; a shop would lose its last rows. */
  private static void refuseUnclosedQuote(String name, String text, char separator) {
    boolean quoted = false;
    boolean cellBegins = true;
    int line = 1;
    int opened = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      line += c == '\n' ? 1 : 0;
      if (c == '"' && (quoted || cellBegins)) {
        opened = quoted ? opened : line;
        quoted = !quoted;
        cellBegins = quoted || (i + 1 < text.length() && text.charAt(i + 1) == '"');
      } else if (!quoted) {
        cellBegins = c == separator || c == '\n' || c == '\r';
      }
    }
    if (quoted) {
      throw new Refused(SheetProblem.BROKEN_QUOTES, name, opened);
    }
  }

  private static Table table(
      String name, char separator, List<CsvRecord> records, Consumer<Refused> each) {
    List<CsvRecord> filled = records.stream().filter(CsvReader::isFilled).toList();
    if (filled.isEmpty()) {
      throw new Refused(SheetProblem.EMPTY, name);
    }
    CsvRecord first = filled.get(0);
    int headingLine = (int) first.getStartingLineNumber();
    List<String> headings = headings(name, first, headingLine, each);
    List<Table.Row> rows = new ArrayList<>();
    for (CsvRecord record : filled.subList(1, filled.size())) {
      try {
        rows.add(row(name, record, headings));
      } catch (Refused tooLong) {
        each.accept(tooLong);
      }
    }
    return new Table(name, separator, headingLine, headings, List.copyOf(rows));
  }

  private static boolean isFilled(CsvRecord record) {
    return record.getFields().stream().anyMatch(cell -> !cell.isBlank());
  }

  private static List<String> headings(
      String name, CsvRecord first, int line, Consumer<Refused> each) {
    List<String> headings = new ArrayList<>();
    List<Refused> wrong = new ArrayList<>();
    for (String field : withoutTrailingBlanks(first.getFields())) {
      String heading = field.strip().toLowerCase(Locale.ROOT);
      int column = headings.size() + 1;
      if (heading.isEmpty()) {
        wrong.add(new Refused(SheetProblem.BLANK_HEADING, name, line, column));
      } else if (headings.contains(heading)) {
        wrong.add(new Refused(SheetProblem.REPEATED_HEADING, name, line, column, heading));
      }
      headings.add(heading);
    }
    if (!wrong.isEmpty()) {
      wrong.subList(0, wrong.size() - 1).forEach(each);
      throw wrong.get(wrong.size() - 1);
    }
    return List.copyOf(headings);
  }

  private static Table.Row row(String name, CsvRecord record, List<String> headings) {
    List<String> fields = withoutTrailingBlanks(record.getFields());
    int line = (int) record.getStartingLineNumber();
    if (fields.size() > headings.size()) {
      throw new Refused(SheetProblem.TOO_MANY_CELLS, name, line, fields.size(), headings.size());
    }
    String[] cells = new String[headings.size()];
    Arrays.fill(cells, "");
    for (int i = 0; i < fields.size(); i++) {
      cells[i] = fields.get(i).strip();
    }
    return new Table.Row(line, List.of(cells));
  }

  private static List<String> withoutTrailingBlanks(List<String> fields) {
    int length = fields.size();
    while (length > 0 && fields.get(length - 1).isBlank()) {
      length--;
    }
    return fields.subList(0, length);
  }
}
