package loopwright.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;

/** The files of one import, read as far as they can be. */
final class Sheets {
  private final List<ImportPlan.PlannedFile> files = new ArrayList<>();
  private final List<Sheet> sheets = new ArrayList<>();
  private final List<RowPlace> leftOut = new ArrayList<>();
  private boolean unusable;

  private Sheets() {}

  static Sheets read(List<ImportFile> files, Optional<DecimalMark> mark, Complaints complaints) {
    Sheets sheets = new Sheets();
    files.forEach(file -> sheets.add(file, mark, complaints));
    return sheets;
  }

  private void add(ImportFile file, Optional<DecimalMark> mark, Complaints complaints) {
    int before = complaints.total();
    Optional<Table> table =
        new CsvReader(ImportFile.MOST_MEGABYTES).read(file.name(), file.bytes(), complaints);
    Optional<FileKind> kind = table.flatMap(FileKind::of);
    if (table.isPresent() && kind.isEmpty() && complaints.total() == before) {
      complaints.add(ImportProblem.UNKNOWN_KIND, file.name(), table.get().headingLine());
    }
    rowsLeftOut(file, table, complaints, before);
    boolean good = kind.isPresent() && headingsAreGood(table.get(), kind.get(), complaints);
    unusable |= !good;
    if (good || kind.filter(k -> canReadOn(table.get(), k)).isPresent()) {
      sheets.add(Sheet.of(table.get(), kind.get(), mark));
    }
    files.add(
        new ImportPlan.PlannedFile(
            file.name(),
            kind.map(FileKind::word).orElse("nothing that is known"),
            table.map(t -> separator(t.separator())).orElse(""),
            RowCounts.of(List.of())));
  }

  /** Rows that the reader of tables could not take in, a cell too many for instance. */
  private void rowsLeftOut(
      ImportFile file, Optional<Table> table, Complaints complaints, int before) {
    int headings = table.map(Table::headingLine).orElse(Integer.MAX_VALUE);
    complaints.kept().stream()
        .skip(before)
        .map(Complaint::row)
        .filter(row -> row > headings)
        .distinct()
        .forEach(row -> leftOut.add(new RowPlace(file.name(), row)));
  }

  /**
   * With every needed column there, the rows' problems can be told beside those of the headings.
   */
  private static boolean canReadOn(Table table, FileKind kind) {
    return kind != FileKind.FAMILIES && kind.needed().stream().allMatch(table::has);
  }

  /** All problems of the headings are told. */
  private static boolean headingsAreGood(Table table, FileKind kind, Complaints complaints) {
    int before = complaints.total();
    Headings.unknown(table, kind.known()).forEach(complaints::add);
    Headings.missing(table, kind.needed()).forEach(complaints::add);
    return complaints.total() == before;
  }

  private static String separator(char separator) {
    return switch (separator) {
      case ';' -> "semicolon";
      case '\t' -> "tab";
      default -> "comma";
    };
  }

  List<Sheet> of(FileKind kind) {
    return sheets.stream().filter(sheet -> sheet.kind() == kind).toList();
  }

  /** Rows that couldn't even be read. */
  List<RowPlace> leftOut() {
    return leftOut;
  }

  boolean unusable() {
    return unusable;
  }

  /** The files with their counts. */
  List<ImportPlan.PlannedFile> planned(List<RowFate> rows) {
    Map<String, List<RowFate>> byFile = rows.stream().collect(Collectors.groupingBy(RowFate::file));
    return files.stream()
        .map(
            file ->
                new ImportPlan.PlannedFile(
                    file.name(),
                    file.holds(),
                    file.separator(),
                    RowCounts.of(byFile.getOrDefault(file.name(), List.of()))))
        .toList();
  }
}
