package loopwright.registerfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.matching.CableUse;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.InterchangeablePair;
import loopwright.matching.Output;
import loopwright.problem.Nearest;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;
import loopwright.sheet.UnitColumn;

/**
 * A list of families with one row each. Its columns are described for users in {@code
 * src/docs/register-file.md}.
 *
 * @param families in the order of the file
 * @param pairs that the file enters as interchangeable
 */
public record FamiliesFile(List<FamilyRow> families, List<InterchangeablePair> pairs) {
  static final int LONGEST_CODE = 40;
  private static final int MOST_MEGABYTES = 25;
  private static final UnitColumn SCALE_FACTOR = UnitColumn.scaleFactor("scale_factor");
  private static final UnitColumn RANGE_FROM = UnitColumn.gap("linear_range_from");
  private static final UnitColumn RANGE_TO = UnitColumn.gap("linear_range_to");
  private static final UnitColumn LEADS = UnitColumn.length("probe_lengths");
  private static final UnitColumn CABLES = UnitColumn.length("cable_lengths");
  private static final UnitColumn SYSTEMS = UnitColumn.length("system_lengths");
  private static final UnitColumn TOLERANCE = UnitColumn.length("length_tolerance");
  private static final List<UnitColumn> UNIT_COLUMNS =
      List.of(SCALE_FACTOR, RANGE_FROM, RANGE_TO, LEADS, CABLES, SYSTEMS, TOLERANCE);
  private static final List<String> PLAIN_COLUMNS =
      List.of(
          "family",
          "name",
          "maker",
          "tip_mm",
          "start_volts",
          "cable_use",
          "two_cables_allowed",
          "connectors",
          "target_alloy",
          "output",
          "profile",
          "interchangeable_with",
          "interchangeable_said_by",
          "note");
  private static final Map<String, CableUse> CABLE_USES =
      Arrays.stream(CableUse.values()).collect(Collectors.toMap(CableUse::word, use -> use));
  private static final Map<String, Output> OUTPUTS =
      Map.of("v", Output.VOLTAGE, "ma", Output.CURRENT);
  private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);

  public FamiliesFile {
    families = List.copyOf(families);
    pairs = List.copyOf(pairs);
  }

  /**
   * @param complaints takes all that is wrong; the list is fit for use only if nothing came
   */
  public static FamiliesFile read(Path file, Complaints complaints) {
    return new CsvReader(MOST_MEGABYTES)
        .read(file, complaints)
        .map(table -> read(table, complaints))
        .orElse(new FamiliesFile(List.of(), List.of()));
  }

  /** As {@link #read(Path, Complaints)}, from a table that is already there. */
  public static FamiliesFile read(Table table, Complaints complaints) {
    int before = complaints.total();
    UNIT_COLUMNS.forEach(column -> column.refuseTwoUnits(table, complaints));
    Headings.unknown(table, headings()).forEach(complaints::add);
    Headings.missing(table, List.of("family")).forEach(complaints::add);
    return complaints.total() > before
        ? new FamiliesFile(List.of(), List.of())
        : new Reading(table, complaints).all();
  }

  /** Every heading that a list of families may have. */
  static Set<String> headings() {
    Set<String> known = new LinkedHashSet<>(PLAIN_COLUMNS);
    UNIT_COLUMNS.forEach(column -> known.addAll(column.headings()));
    return known;
  }

  /** For the rules. */
  public Families forRules() {
    return Families.of(families.stream().map(FamilyRow::view).toList(), pairs);
  }

  /** One pass over a table whose headings are known. */
  private static final class Reading {
    private final Table table;
    private final Cells cells;
    private final Quantities quantities;
    private final Map<String, FamilyRow> byCode = new LinkedHashMap<>();
    private final List<InterchangeablePair> pairs = new ArrayList<>();

    Reading(Table table, Complaints complaints) {
      this.table = table;
      this.cells = new Cells(table, complaints);
      this.quantities = new Quantities(table, cells);
    }

    FamiliesFile all() {
      table.rows().forEach(this::family);
      table.rows().forEach(this::pairs);
      return new FamiliesFile(List.copyOf(byCode.values()), pairs);
    }

    private void family(Table.Row row) {
      String code = cells.neededText(row, "family", LONGEST_CODE).orElse("");
      FamilyRow read =
          new FamilyRow(
              table.name(),
              row.line(),
              view(row, code),
              text(row, "name", 120),
              text(row, "maker", 80),
              cells.choice(row, "two_cables_allowed", YES_NO).orElse(null),
              cells.quantity(row, RANGE_FROM).orElse(null),
              cells.quantity(row, RANGE_TO).orElse(null),
              cells.number(row, "start_volts").orElse(null),
              text(row, "connectors", 120),
              text(row, "target_alloy", 60),
              text(row, "profile", 80),
              text(row, "note", 1000));
      FamilyRow earlier = code.isEmpty() ? null : byCode.putIfAbsent(key(code), read);
      if (earlier != null) {
        cells.complain(row, "family", RegisterFileProblem.REPEATED_FAMILY, code, earlier.row());
      }
    }

    private FamilyView view(Table.Row row, String code) {
      boolean allowed = !table.cell(row, "two_cables_allowed").equalsIgnoreCase("no");
      return FamilyView.of(code)
          .leadLengths(quantities.lengths(row, LEADS))
          .cableLengths(quantities.lengths(row, CABLES))
          .systemLengths(quantities.lengths(row, SYSTEMS))
          .cableUse(cells.choice(row, "cable_use", CABLE_USES).orElse(CableUse.OPTIONAL))
          .forbidsTwoCables(!allowed)
          .lengthTolerance(quantities.tolerance(row, TOLERANCE).orElse(null))
          .scaleFactor(quantities.scaleFactor(row, SCALE_FACTOR).orElse(null))
          .tipMillimetres(quantities.tip(row, "tip_mm").orElse(null))
          .output(cells.choice(row, "output", OUTPUTS).orElse(Output.VOLTAGE))
          .build();
    }

    private String text(Table.Row row, String heading, int most) {
      return cells.text(row, heading, most).orElse("");
    }

    private void pairs(Table.Row row) {
      List<String> others =
          Stream.of(table.cell(row, "interchangeable_with").split("[\\s|]+"))
              .filter(code -> !code.isEmpty())
              .toList();
      String saidBy = text(row, "interchangeable_said_by", 200);
      if (!others.isEmpty() && saidBy.isEmpty()) {
        cells.complain(row, "interchangeable_said_by", RegisterFileProblem.PAIR_WITHOUT_VOUCHER);
      }
      others.forEach(other -> pair(row, other, saidBy));
    }

    private void pair(Table.Row row, String other, String saidBy) {
      if (byCode.containsKey(key(other))) {
        pairs.add(new InterchangeablePair(table.cell(row, "family"), other, saidBy));
      } else {
        cells.complain(
            row,
            "interchangeable_with",
            RegisterFileProblem.UNKNOWN_FAMILY,
            other,
            Nearest.word(other, byCode.values().stream().map(f -> f.view().code()).toList()));
      }
    }

    private static String key(String code) {
      return code.toLowerCase(Locale.ROOT);
    }
  }
}
