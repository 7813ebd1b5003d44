package loopwright.registerfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.matching.Families;
import loopwright.matching.RuleBook;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Table;

/**
 * The loops of one or more register files, taken as one register: a part in two files stands in two
 * places.
 */
public final class Register {
  private static final int MOST_MEGABYTES = 25;

  private final List<RegisterRow> rows;

  private Register(List<RegisterRow> rows) {
    this.rows = List.copyOf(rows);
  }

  /**
   * Reads all files to the end, so that everything wrong is known at once.
   *
   * @param complaints takes all that is wrong; the register is fit for use only if nothing came
   */
  public static Register read(List<Path> files, Families families, Complaints complaints) {
    CsvReader csv = new CsvReader(MOST_MEGABYTES);
    List<RegisterRow> rows = new ArrayList<>();
    List<Path> seen = new ArrayList<>();
    for (Path file : files) {
      Path place = file.toAbsolutePath().normalize();
      if (seen.contains(place)) {
        complaints.add(RegisterFileProblem.GIVEN_TWICE, file);
      } else {
        csv.read(file, complaints)
            .ifPresent(table -> rows.addAll(RegisterFile.rows(table, families, complaints)));
      }
      seen.add(place);
    }
    return of(rows, complaints);
  }

  /** As {@link #read}, from one table that is already there. */
  public static Register read(Table table, Families families, Complaints complaints) {
    return of(RegisterFile.rows(table, families, complaints), complaints);
  }

  private static Register of(List<RegisterRow> rows, Complaints complaints) {
    refuseRepeatedTags(rows, complaints);
    return new Register(rows);
  }

  private static void refuseRepeatedTags(List<RegisterRow> rows, Complaints complaints) {
    Map<String, RegisterRow> first = new HashMap<>();
    for (RegisterRow row : rows) {
      String tag = row.loop().tag();
      RegisterRow earlier = first.putIfAbsent(tag.toLowerCase(Locale.ROOT), row);
      if (earlier != null && !tag.isEmpty()) {
        complaints.add(
            RegisterFileProblem.REPEATED_TAG,
            row.file(),
            row.row(),
            RegisterFile.TAG,
            tag,
            earlier.file(),
            earlier.row());
      }
    }
  }

  /** Every loop judged, in the order of files and rows. */
  public List<JudgedLoop> judge(RuleBook book) {
    SerialIndex serials = new SerialIndex(rows);
    return rows.stream()
        .map(row -> new JudgedLoop(row.file(), row.row(), book.judge(serials.joined(row))))
        .toList();
  }
}
