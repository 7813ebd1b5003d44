package loopwright.registerfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.matching.Evidence;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartName;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.problem.Problem;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaints;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;
import loopwright.units.Length;

/**
 * A register with one row a loop. Its columns are described for users in {@code
 * src/docs/register-file.md}.
 */
final class RegisterFile {
  static final String TAG = "tag";
  static final String FAMILY = "family";
  private static final String NOTE = "note";
  private static final int LONGEST_TAG = 100;
  private static final int LONGEST_NAME = 80;
  private static final Map<String, Evidence> EVIDENCE =
      Arrays.stream(Evidence.values())
          .collect(Collectors.toMap(Evidence::word, evidence -> evidence));

  private final Table table;
  private final Cells cells;
  private final Quantities quantities;
  private final Families families;
  private final Set<Fact> facts;
  private final Map<String, List<String>> besidesLength;

  private RegisterFile(Table table, Families families, Complaints complaints) {
    this.table = table;
    this.cells = new Cells(table, complaints);
    this.quantities = new Quantities(table, cells);
    this.families = families;
    this.facts = facts(table);
    this.besidesLength = besidesLength(table);
  }

  /**
   * @param complaints takes everything wrong; the rows are fit for judging only if nothing came
   */
  static List<RegisterRow> rows(Table table, Families families, Complaints complaints) {
    int before = complaints.total();
    headings(table, complaints);
    if (complaints.total() > before) {
      return List.of();
    }
    if (table.rows().isEmpty()) {
      complaints.add(RegisterFileProblem.NO_LOOPS, table.name());
    }
    RegisterFile file = new RegisterFile(table, families, complaints);
    return table.rows().stream().map(file::row).toList();
  }

  /** Every heading that a register may have. */
  static Set<String> headings() {
    Set<String> known = new LinkedHashSet<>(List.of(TAG, FAMILY, NOTE));
    PartColumns.ALL.forEach(part -> known.addAll(part.headings()));
    return known;
  }

  private static void headings(Table table, Complaints complaints) {
    List<String> needed = new ArrayList<>(List.of(TAG));
    for (PartColumns part : PartColumns.ALL) {
      part.unitColumns().forEach(column -> column.refuseTwoUnits(table, complaints));
      if (part != PartColumns.SECOND_CABLE) {
        needed.add(part.serial());
        needed.add(part.length().headingIn(table));
      }
    }
    Headings.unknown(table, headings()).forEach(complaints::add);
    Headings.missing(table, needed).forEach(complaints::add);
  }

  /** What this file has columns for; where else a part stands is known from its other rows. */
  private static Set<Fact> facts(Table table) {
    Set<Fact> facts = new LinkedHashSet<>(Set.of(Fact.PLACEMENTS));
    Map<Fact, List<String>> columns =
        Map.of(
            Fact.PROBE_TIP, List.of(PartColumns.PROBE.tip()),
            Fact.DRIVER_TIP, List.of(PartColumns.DRIVER.tip()),
            Fact.PROBE_SCALE_FACTOR, PartColumns.PROBE.scaleFactor().get(0).headings(),
            Fact.DRIVER_SCALE_FACTOR, PartColumns.DRIVER.scaleFactor().get(0).headings());
    columns.forEach(
        (fact, headings) -> {
          if (headings.stream().anyMatch(table::has)) {
            facts.add(fact);
          }
        });
    return Set.copyOf(facts);
  }

  private RegisterRow row(Table.Row row) {
    String tag = cells.neededText(row, TAG, LONGEST_TAG).orElse("");
    Optional<String> family = cells.text(row, FAMILY, FamiliesFile.LONGEST_CODE);
    List<Slot> path = new ArrayList<>();
    path.add(slot(row, PartColumns.CABLE, family));
    Slot second = slot(row, PartColumns.SECOND_CABLE, family);
    if (second.part().isPresent()) {
      path.add(second);
    }
    LoopView loop =
        LoopView.at(tag)
            .probe(slot(row, PartColumns.PROBE, family))
            .path(path)
            .driver(slot(row, PartColumns.DRIVER, family))
            .families(families)
            .holding(facts)
            .build();
    return new RegisterRow(table.name(), row.line(), loop);
  }

  private Slot slot(Table.Row row, PartColumns columns, Optional<String> family) {
    boolean isCable = columns.kind() == PartColumns.CABLE.kind();
    Optional<String> serial = serial(row, columns);
    Optional<Length> length =
        isCable && table.cell(row, columns.serial()).isEmpty()
            ? quantities.lengthOrNone(row, columns.length())
            : quantities.length(row, columns.length());
    if (length.isEmpty() && !isFilledBesidesLength(row, columns)) {
      return isCable ? Slot.NONE_FITTED : Slot.NOT_RECORDED;
    }
    PartView.Builder part =
        PartView.of(columns.kind())
            .name(
                new PartName(
                    cells.text(row, columns.maker(), LONGEST_NAME).orElse(null),
                    null,
                    serial.orElse(null),
                    null))
            .family(
                cells
                    .text(row, columns.family(), FamiliesFile.LONGEST_CODE)
                    .or(() -> family)
                    .orElse(null))
            .length(length.map(metres -> known(row, columns, metres)).orElse(null));
    columns
        .measured()
        .forEach(column -> part.measuredLength(quantities.length(row, column).orElse(null)));
    columns
        .scaleFactor()
        .forEach(column -> part.scaleFactor(quantities.scaleFactor(row, column).orElse(null)));
    part.tipMillimetres(quantities.tip(row, columns.tip()).orElse(null));
    return Slot.of(part.build());
  }

  /** The headings of each slot that this table has, those of its nominal length left out. */
  private static Map<String, List<String>> besidesLength(Table table) {
    Map<String, List<String>> all = new HashMap<>();
    for (PartColumns columns : PartColumns.ALL) {
      List<String> present = new ArrayList<>(columns.headings());
      present.removeAll(columns.length().headings());
      present.retainAll(table.headings());
      all.put(columns.name(), List.copyOf(present));
    }
    return all;
  }

  private boolean isFilledBesidesLength(Table.Row row, PartColumns columns) {
    return cells.anyFilled(row, besidesLength.getOrDefault(columns.name(), List.of()));
  }

  private Optional<String> serial(Table.Row row, PartColumns columns) {
    return cells
        .text(row, columns.serial(), Serials.MOST_CHARACTERS)
        .filter(typed -> !Serials.isNotAccessible(typed))
        .filter(typed -> accept(row, columns, typed));
  }

  private boolean accept(Table.Row row, PartColumns columns, String typed) {
    Problem problem = Serials.problemOf(typed);
    if (problem != null) {
      cells.complain(row, columns.serial(), problem, typed);
    }
    return problem == null;
  }

  /**
   * Without a column for it a length counts as read on the part; an empty cell in it as assumed.
   */
  private KnownLength known(Table.Row row, PartColumns columns, Length length) {
    Evidence unsaid = table.has(columns.evidence()) ? Evidence.ASSUMED : Evidence.READ_ON_PART;
    return new KnownLength(length, cells.choice(row, columns.evidence(), EVIDENCE).orElse(unsaid));
  }
}
