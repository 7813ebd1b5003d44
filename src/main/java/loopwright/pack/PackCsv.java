package loopwright.pack;

import java.util.List;
import loopwright.sheet.CsvText;

/** The sheet to fill in, as CSV. */
final class PackCsv {
  private PackCsv() {}

  static byte[] of(Identity identity, List<LoopSheet> sheets) {
    CsvText csv = new CsvText().row(Column.headings());
    sheets.forEach(
        sheet -> PackTable.lines(sheet).forEach(line -> csv.row(PackTable.cells(identity, line))));
    return csv.bytes();
  }
}
