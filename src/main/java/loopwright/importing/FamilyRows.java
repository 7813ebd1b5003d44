package loopwright.importing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.matching.FamilyView;
import loopwright.matching.InterchangeablePair;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.problem.Nearest;
import loopwright.register.Family;
import loopwright.register.FamilyDetails;
import loopwright.register.FamilyId;
import loopwright.register.FamilyPair;
import loopwright.register.LinearRange;
import loopwright.register.OfferedLength;
import loopwright.registerfile.FamiliesFile;
import loopwright.registerfile.FamilyRow;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.sheet.Table;
import loopwright.sheet.UnitColumn;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * Rows of a families file, in the form that the command check reads too. A row is known by the
 * family's code. What a cell says is taken over, an empty cell leaves what is recorded.
 */
final class FamilyRows {
  private static final FileKind KIND = FileKind.FAMILIES;

  private final Planning planning;
  private final Map<World.Key, Family> known = new HashMap<>();
  private final Map<World.Key, RowPlace> seen = new HashMap<>();
  private final Set<String> profiles;

  FamilyRows(Planning planning) {
    this.planning = planning;
    for (Family family : planning.features.families().all(planning.sql)) {
      World.Key key = FamilyCells.key(family.code());
      known.put(key, family);
      planning.world.recorded(key, family.id().number());
      planning.familyCodes.put(family.id().number(), family.code());
    }
    profiles =
        planning.features.profiles().newest(planning.sql).stream()
            .map(stored -> stored.profile().code())
            .collect(Collectors.toSet());
  }

  void plan(List<Sheet> sheets) {
    List<InterchangeablePair> pairs = new ArrayList<>();
    for (Sheet sheet : sheets) {
      Set<Integer> bad = styleProblems(sheet);
      Complaints complaints = planning.complaints;
      int before = complaints.kept().size();
      FamiliesFile file = FamiliesFile.read(sheet.table(), complaints);
      complaints.kept().stream().skip(before).map(Complaint::row).forEach(bad::add);
      Map<Integer, FamilyRow> byLine =
          file.families().stream().collect(Collectors.toMap(FamilyRow::row, row -> row));
      for (int i = 0; i < sheet.table().rows().size(); i++) {
        Table.Row row = sheet.table().rows().get(i);
        row(sheet, row, Optional.ofNullable(byLine.get(row.line())), bad.contains(row.line()));
      }
      pairs.addAll(file.pairs());
    }
    pairs.forEach(this::pair);
  }

  /** Formulas and numbers that could mean two things, which the reader of families doesn't ask. */
  private Set<Integer> styleProblems(Sheet sheet) {
    return sheet.rows(planning.complaints).stream()
        .peek(row -> sheet.table().headings().forEach(row::text))
        .peek(row -> KIND.numeric().forEach(row::refuseDoubtful))
        .filter(row -> !row.isGood())
        .map(row -> row.place().line())
        .collect(Collectors.toSet());
  }

  private void row(Sheet sheet, Table.Row line, Optional<FamilyRow> read, boolean bad) {
    RowCells row = new RowCells(sheet.table(), line, sheet.numbers(), planning.complaints);
    String code = sheet.table().cell(line, "family");
    World.Key key = FamilyCells.key(code);
    if (bad || read.isEmpty()) {
      refuse(row, key, code);
      return;
    }
    RowPlace first = seen.putIfAbsent(key, row.place());
    if (first != null) {
      row.complain("family", ImportProblem.TWICE, "family " + code, first);
    }
    Optional<Family> recorded = Optional.ofNullable(known.get(key));
    Optional<FamilyDetails> details =
        details(row, read.get(), lengths(sheet.table(), line), recorded);
    if (details.isEmpty() || !row.isGood()) {
      refuse(row, key, code);
    } else if (recorded.isPresent()) {
      compare(row, recorded.get(), details.get());
    } else {
      add(row, key, details.get());
    }
  }

  private void refuse(RowCells row, World.Key key, String code) {
    planning.world.refuse(key, row.place());
    planning.refused(row, code);
  }

  private List<OfferedLength> lengths(Table table, Table.Row line) {
    Cells cells = new Cells(table, new Complaints());
    List<OfferedLength> all = new ArrayList<>();
    add(all, PartKind.PROBE, cells.quantities(line, UnitColumn.length("probe_lengths")));
    add(all, PartKind.CABLE, cells.quantities(line, UnitColumn.length("cable_lengths")));
    add(all, PartKind.DRIVER, cells.quantities(line, UnitColumn.length("system_lengths")));
    return all;
  }

  private static void add(List<OfferedLength> all, PartKind part, List<Reported> typed) {
    typed.forEach(length -> all.add(new OfferedLength(part, length)));
  }

  private Optional<FamilyDetails> details(
      RowCells row, FamilyRow read, List<OfferedLength> lengths, Optional<Family> recorded) {
    String profile = read.profile();
    if (!profile.isEmpty() && !profiles.contains(profile)) {
      row.complain(
          "profile",
          ImportProblem.UNKNOWN_WORD,
          Shown.cell(profile),
          Nearest.word(profile, profiles),
          "Known are: " + profiles.stream().sorted().collect(Collectors.joining(", ")) + ".");
    }
    ScaleFactor scale = read.view().scaleFactor();
    if (recorded.isEmpty()) {
      needed(row, scale != null, "scale_factor_mv_um", "the nominal scale factor, or in mV/mil");
      needed(row, !read.maker().isEmpty(), "maker", "who makes the family");
    }
    if (!row.isGood()) {
      return Optional.empty();
    }
    return row.attempt("family", () -> merged(row, read, lengths, recorded));
  }

  private static void needed(RowCells row, boolean given, String heading, String what) {
    if (!given) {
      row.complain(heading, ImportProblem.EMPTY_CELL, what);
    }
  }

  private static FamilyDetails merged(
      RowCells row, FamilyRow read, List<OfferedLength> lengths, Optional<Family> recorded) {
    FamilyDetails was = recorded.map(Family::details).orElse(null);
    FamilyView view = read.view();
    String name = or(read.name(), was == null ? view.code() : was.name());
    String maker = or(read.maker(), was == null ? "" : was.maker());
    ScaleFactor scale = view.scaleFactor();
    if (scale == null) {
      scale = java.util.Objects.requireNonNull(was).scaleFactor();
    }
    String code = was == null ? view.code() : was.code();
    FamilyDetails.Builder details =
        FamilyDetails.of(code, name, maker, scale)
            .range(range(read, was))
            .startVolts(
                read.startVolts() == null && was != null ? was.startVolts() : read.startVolts())
            .tipMillimetres(
                view.tipMillimetres() == null && was != null
                    ? was.tipMillimetres()
                    : view.tipMillimetres())
            .connectors(or(read.connectors(), was == null ? "" : was.connectors()))
            .targetAlloy(or(read.targetAlloy(), was == null ? "" : was.targetAlloy()))
            .outputVolts(was == null ? Range.NOT_SAID : was.outputVolts())
            .selectableSystemLength(was != null && was.selectableSystemLength())
            .note(or(read.note(), was == null ? "" : was.note()))
            .profile(read.profile().isEmpty() && was != null ? was.profile() : profile(read))
            .lengths(offered(lengths, was));
    details.cableUse(was == null || row.isFilled("cable_use") ? view.cableUse() : was.cableUse());
    details.output(was == null || row.isFilled("output") ? view.output() : was.output());
    Boolean two = read.twoCablesAllowed();
    details.twoCablesAllowed(two == null ? was == null || was.twoCablesAllowed() : two);
    if (view.lengthTolerance() != null) {
      details.lengthTolerance(view.lengthTolerance());
    } else if (was != null) {
      details.lengthTolerance(was.lengthTolerance());
    }
    return details.build();
  }

  private static @Nullable String profile(FamilyRow read) {
    return read.profile().isEmpty() ? null : read.profile();
  }

  private static String or(String said, String otherwise) {
    return said.isEmpty() ? otherwise : said;
  }

  private static LinearRange range(FamilyRow read, @Nullable FamilyDetails was) {
    Reported from = read.rangeFrom();
    Reported to = read.rangeTo();
    LinearRange before = was == null ? LinearRange.NOT_SAID : was.range();
    return new LinearRange(
        from == null ? before.fromMicrometres() : Double.valueOf(from.canonical()),
        to == null ? before.toMicrometres() : Double.valueOf(to.canonical()));
  }

  /** A list that the row gives replaces the recorded one; the same length in other words stays. */
  private static List<OfferedLength> offered(
      List<OfferedLength> said, @Nullable FamilyDetails was) {
    List<OfferedLength> all = new ArrayList<>();
    for (PartKind part : List.of(PartKind.PROBE, PartKind.CABLE, PartKind.DRIVER)) {
      List<OfferedLength> before = was == null ? List.of() : was.lengthsOf(part);
      List<OfferedLength> now = said.stream().filter(length -> length.part() == part).toList();
      if (now.isEmpty()) {
        all.addAll(before);
      }
      now.forEach(
          length ->
              all.add(
                  before.stream()
                      .filter(old -> old.length().equals(length.length()))
                      .findFirst()
                      .orElse(length)));
    }
    return all;
  }

  private void add(RowCells row, World.Key key, FamilyDetails details) {
    long planned = planning.world.plan(key, row.place());
    remember(planned, details);
    planning.steps.add(
        (tx, ids) -> ids.made(planned, planning.features.families().add(tx, details).number()));
    planning.fate(RowFate.of(row.place(), Fate.ADDED, details.code()));
  }

  private void remember(long number, FamilyDetails details) {
    planning.familyCodes.put(number, details.code());
    String profile = details.profile();
    if (profile != null) {
      planning.familyProfiles.put(number, profile);
    }
  }

  private void compare(RowCells row, Family recorded, FamilyDetails details) {
    remember(recorded.id().number(), details);
    List<FieldChange> changes =
        FieldChange.between(FamilyText.of(recorded.details()), FamilyText.of(details));
    if (changes.isEmpty()) {
      planning.fate(RowFate.of(row.place(), Fate.UNCHANGED, recorded.code()));
      return;
    }
    planning.steps.add(
        (tx, ids) ->
            planning.features.families().change(tx, recorded.id(), recorded.version(), details));
    planning.fate(RowFate.changed(row.place(), recorded.code(), changes));
  }

  private void pair(InterchangeablePair pair) {
    World.Key one = FamilyCells.key(pair.first());
    World.Key other = FamilyCells.key(pair.second());
    RowPlace row = seen.get(one);
    Optional<World.Entry> first = planning.world.find(one);
    Optional<World.Entry> second = planning.world.find(other);
    if (row == null || first.isEmpty() || second.isEmpty() || one.equals(other)) {
      return;
    }
    long a = first.get().number();
    long b = second.get().number();
    if (isPaired(a, b)) {
      return;
    }
    planning.changes(row, new FieldChange("interchangeable with", "", pair.second()));
    planning.steps.add(
        (tx, ids) ->
            planning
                .features
                .families()
                .pair(tx, new FamilyId(ids.real(a)), new FamilyId(ids.real(b)), pair.saidBy()));
  }

  private boolean isPaired(long one, long other) {
    for (FamilyPair pair : planning.features.families().pairs(planning.sql)) {
      long first = pair.first().number();
      long second = pair.second().number();
      if (first == one && second == other || first == other && second == one) {
        return true;
      }
    }
    return false;
  }
}
