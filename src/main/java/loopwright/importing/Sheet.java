package loopwright.importing;

import java.util.List;
import java.util.Optional;
import loopwright.sheet.Complaints;
import loopwright.sheet.Table;

/** A file that can be read: its table, what it holds and how it writes numbers. */
record Sheet(Table table, FileKind kind, NumberStyle numbers) {

  static Sheet of(Table table, FileKind kind, Optional<DecimalMark> chosen) {
    return new Sheet(table, kind, NumberStyle.of(table, kind.numeric(), chosen));
  }

  List<RowCells> rows(Complaints complaints) {
    return table.rows().stream().map(row -> new RowCells(table, row, numbers, complaints)).toList();
  }
}
