package loopwright.sheet;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.units.Numbers;

/**
 * Writes CSV that a spreadsheet opens as it is meant: UTF-8 with a byte-order mark, comma, every
 * cell that needs it in quotes (RFC 4180), and no cell that a spreadsheet would run as a formula.
 */
public final class CsvText {
  private static final String STARTS_A_FORMULA = "=+-@\t\r";

  private final StringBuilder text = new StringBuilder("\uFEFF");

  /** One row; a text that looks like a formula gets an apostrophe before it, a number doesn't. */
  public CsvText row(List<String> cells) {
    text.append(cells.stream().map(CsvText::cell).collect(Collectors.joining(","))).append("\r\n");
    return this;
  }

  private static String cell(String content) {
    boolean formula =
        !content.isEmpty()
            && STARTS_A_FORMULA.indexOf(content.charAt(0)) >= 0
            && Numbers.read(content).isEmpty();
    String safe = formula ? "'" + content : content;
    return safe.matches("(?s).*[\",;\r\n].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }

  public byte[] bytes() {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
