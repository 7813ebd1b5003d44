package loopwright.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import loopwright.problem.Refused;
import loopwright.units.Numbers;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;

/**
 * Reads the first sheet of a workbook (ECMA-376, Office Open XML) cell by cell, and says of each
 * what kind of thing stands in it: a spreadsheet shows a text and a number alike.
 */
public final class XlsxReader {
  private static final int MEGABYTE = 1_000_000;
  private static final int SECONDS_A_DAY = 24 * 60 * 60;
  private static final ReadingOptions OPTIONS = new ReadingOptions(true, false);
  private static final int MOST_ROWS = 50_000;
  private static final int MOST_COLUMNS = 100;

  /** Above 100,000 days a number formatted as a date is a slip; 1899-12-30 is day 0. */
  private static final LocalDate DAY_ZERO = LocalDate.of(1899, 12, 30);

  private final int mostMegabytes;

  /**
   * @param mostMegabytes size above which a file is refused unread
   */
  public XlsxReader(int mostMegabytes) {
    this.mostMegabytes = mostMegabytes;
  }

  /** Whether the bytes begin like a workbook, whatever the file is called. */
  public static boolean looksLikeOne(byte[] bytes) {
    return bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
  }

  /**
   * The filled rows.
   *
   * @param name shown in messages
   * @throws Refused with a {@link SheetProblem} if it can't be read
   */
  public List<Row> read(String name, byte[] bytes) {
    refuseTooLarge(name, bytes.length);
    List<Row> read = new ArrayList<>();
    read(
        name,
        () -> new ReadableWorkbook(new ByteArrayInputStream(bytes), OPTIONS),
        MOST_ROWS,
        read::add);
    return read;
  }

  /**
   * The filled rows one after another, straight from the file.
   *
   * @param mostRows a sheet with more filled rows is refused
   * @throws Refused with a {@link SheetProblem} if it can't be read, or what {@code rows} throws
   */
  public void read(String name, Path file, int mostRows, Consumer<Row> rows) throws IOException {
    refuseTooLarge(name, Files.size(file));
    read(name, () -> new ReadableWorkbook(file.toFile(), OPTIONS), mostRows, rows);
  }

  private void refuseTooLarge(String name, long size) {
    if (size > (long) mostMegabytes * MEGABYTE) {
      throw new Refused(
          SheetProblem.TOO_LARGE, name, (size + MEGABYTE - 1) / MEGABYTE, mostMegabytes);
    }
  }

  private interface Opening {
    ReadableWorkbook open() throws IOException;
  }

  private static void read(String name, Opening opening, int mostRows, Consumer<Row> rows) {
    try (ReadableWorkbook book = opening.open();
        Stream<org.dhatim.fastexcel.reader.Row> all = book.getFirstSheet().openStream()) {
      Iterator<Row> filled =
          all.map(row -> row(row, book.isDate1904())).filter(row -> !row.isBlank()).iterator();
      for (int count = 0; isMore(name, filled); count++) {
        if (count == mostRows) {
          throw new Refused(SheetProblem.TOO_MANY_ROWS, name, mostRows);
        }
        rows.accept(filled.next());
      }
    } catch (Refused refused) {
      throw refused;
    } catch (IOException | RuntimeException broken) {
      throw notAWorkbook(name, broken);
    }
  }

  private static boolean isMore(String name, Iterator<Row> rows) {
    try {
      return rows.hasNext();
    } catch (RuntimeException broken) {
      throw notAWorkbook(name, broken);
    }
  }

  private static Refused notAWorkbook(String name, Exception broken) {
    Refused refused = new Refused(SheetProblem.NOT_A_WORKBOOK, name);
    refused.initCause(broken);
    return refused;
  }

  /**
   * A row of a workbook.
   *
   * @param line as the spreadsheet counts, from 1
   * @param cells by column, counted from 0; a blank cell is missing or {@link Kind#EMPTY}
   */
  public record Row(int line, Map<Integer, Cell> cells) {
    public Row {
      cells = Map.copyOf(cells);
    }

    public Cell cell(int column) {
      return cells.getOrDefault(column, Cell.EMPTY);
    }

    boolean isBlank() {
      return cells.isEmpty();
    }
  }

  /** What stands in a cell. */
  public enum Kind {
    EMPTY,
    TEXT,
    NUMBER,
    /** A number that the spreadsheet shows as a day, with or without a time. */
    DATE,
    FORMULA,
    /** #DIV/0! and the like, or true and false. */
    OTHER
  }

  /**
   * A cell.
   *
   * @param text a number as its shortest digits, a date as {@code 2026-03-14} or {@code 2026-03-14
   *     09:40}, with seconds only if there are any, else as written, blanks around it dropped
   */
  public record Cell(Kind kind, String text) {
    public static final Cell EMPTY = new Cell(Kind.EMPTY, "");

    /** As a text file has it: no kind to speak of. */
    public static Cell ofText(String text) {
      return text.isBlank() ? EMPTY : new Cell(Kind.TEXT, text.strip());
    }
  }

  private static Row row(org.dhatim.fastexcel.reader.Row row, boolean from1904) {
    Map<Integer, Cell> cells = new HashMap<>();
    for (int column = 0; column < Math.min(row.getCellCount(), MOST_COLUMNS); column++) {
      Optional<org.dhatim.fastexcel.reader.Cell> cell = row.getOptionalCell(column);
      Cell told = cell.map(given -> cell(given, from1904)).orElse(Cell.EMPTY);
      if (told.kind() != Kind.EMPTY) {
        cells.put(column, told);
      }
    }
    return new Row(row.getRowNum(), cells);
  }

  private static Cell cell(org.dhatim.fastexcel.reader.Cell cell, boolean from1904) {
    String raw = cell.getRawValue() == null ? "" : cell.getRawValue();
    if (cell.getFormula() != null || cell.getType() == CellType.FORMULA) {
      return new Cell(Kind.FORMULA, raw);
    }
    return switch (cell.getType()) {
      case EMPTY -> Cell.EMPTY;
      case NUMBER -> number(cell, new BigDecimal(raw), from1904);
      case STRING -> Cell.ofText(cell.asString());
      default -> new Cell(Kind.OTHER, raw);
    };
  }

  private static Cell number(
      org.dhatim.fastexcel.reader.Cell cell, BigDecimal number, boolean from1904) {
    String format = cell.getDataFormatString();
    if (format != null && isDate(format)) {
      return date(number, from1904);
    }
    return new Cell(Kind.NUMBER, Numbers.plain(number.round(new MathContext(15))));
  }

  /** A format with a day or a year in it; what stands in quotes or brackets is not looked at. */
  private static boolean isDate(String format) {
    String bare = format.replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "").toLowerCase(Locale.ROOT);
    return !bare.equals("general") && (bare.contains("d") || bare.contains("y"));
  }

  private static Cell date(BigDecimal serial, boolean from1904) {
    if (serial.signum() < 0 || serial.compareTo(BigDecimal.valueOf(100_000)) > 0) {
      return new Cell(Kind.OTHER, Numbers.plain(serial));
    }
    long seconds =
        serial
            .multiply(BigDecimal.valueOf(SECONDS_A_DAY))
            .setScale(0, RoundingMode.HALF_UP)
            .longValueExact();
    LocalDate day = DAY_ZERO.plusDays(seconds / SECONDS_A_DAY + (from1904 ? 1462 : 0));
    long inDay = seconds % SECONDS_A_DAY;
    String time = inDay == 0 ? "" : " " + LocalTime.ofSecondOfDay(inDay);
    return new Cell(Kind.DATE, day + time);
  }
}
