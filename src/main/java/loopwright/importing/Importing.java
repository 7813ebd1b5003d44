package loopwright.importing;

import java.security.SecureRandom;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.journal.JournalStore;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/**
 * Imports files in two steps: a plan that says what would become of every row, and the run of
 * exactly that plan, all of it or nothing. Shared by request threads.
 */
public final class Importing {
  /** The kind of act that an import is in the journal. */
  public static final String ACT = "import";

  private static final SecureRandom RANDOM = new SecureRandom();

  private final Database database;
  private final Features features;
  private final InstantSource clock;
  private final Shelf shelf;

  public Importing(Database database, Features features, InstantSource clock) {
    this.database = database;
    this.features = features;
    this.clock = clock;
    this.shelf = new Shelf(clock);
  }

  /**
   * Says what an import of these files would do, and writes nothing. They are planned together: a
   * placement may name a component of another file.
   *
   * @param mark the decimal mark of all files, when the person chose one
   * @throws Refused {@link ImportProblem#NO_FILES}
   */
  public ImportPlan plan(List<ImportFile> files, Optional<DecimalMark> mark) {
    if (files.isEmpty()) {
      throw new Refused(ImportProblem.NO_FILES);
    }
    List<ImportFile> named = told(files);
    Shelf.Kept kept = database.snapshot(sql -> plan(sql, named, mark));
    shelf.put(kept);
    return kept.plan;
  }

  /** Two files of one name are told apart. */
  private static List<ImportFile> told(List<ImportFile> files) {
    Map<String, Integer> seen = new HashMap<>();
    return files.stream()
        .map(
            file -> {
              int nth = seen.merge(file.name(), 1, Integer::sum);
              return nth == 1 ? file : new ImportFile(file.name() + " (" + nth + ")", file.bytes());
            })
        .toList();
  }

  private Shelf.Kept plan(DSLContext sql, List<ImportFile> files, Optional<DecimalMark> mark) {
    Planning planning = new Planning(sql, clock.instant(), features);
    Sheets sheets = Sheets.read(files, mark, planning.complaints);
    new FamilyRows(planning).plan(sheets.of(FileKind.FAMILIES));
    new ComponentRows(planning).plan(sheets.of(FileKind.COMPONENTS));
    new PointRows(planning).plan(sheets.of(FileKind.POINTS));
    new PlacementRows(planning).plan(sheets.of(FileKind.PLACEMENTS));
    new CalibrationRows(planning).plan(sheets.of(FileKind.CALIBRATIONS));
    sheets.leftOut().forEach(planning::unread);
    List<RowFate> rows = inOrder(planning.fates(), files);
    ImportPlan plan =
        new ImportPlan(
            newId(),
            planning.now,
            sheets.planned(rows),
            rows,
            RowCounts.of(rows),
            planning.complaints.kept(),
            planning.complaints.total(),
            sheets.unusable());
    return new Shelf.Kept(plan, files, mark, JournalStore.head(sql), List.copyOf(planning.steps));
  }

  private static List<RowFate> inOrder(List<RowFate> rows, List<ImportFile> files) {
    Map<String, Integer> order = new HashMap<>();
    files.forEach(file -> order.put(file.name(), order.size()));
    Comparator<RowFate> byFile = Comparator.comparing(row -> order.getOrDefault(row.file(), 0));
    return rows.stream().sorted(byFile.thenComparing(RowFate::row)).toList();
  }

  private static String newId() {
    byte[] bytes = new byte[12];
    RANDOM.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /**
   * A plan that was made a while ago.
   *
   * @throws Refused {@link ImportProblem#NO_PLAN} when it is forgotten
   */
  public ImportPlan planned(String id) {
    return shelf.needed(id).plan;
  }

  /** The receipt of a plan that was run. */
  public Optional<ImportReceipt> receipt(String id) {
    Shelf.Kept kept = shelf.needed(id);
    synchronized (kept) {
      return Optional.ofNullable(kept.receipt);
    }
  }

  /** Makes a new plan of the same files, for a register that has changed meanwhile. */
  public ImportPlan planAgain(String id) {
    Shelf.Kept kept = shelf.needed(id);
    return plan(kept.files, kept.mark);
  }

  /**
   * Runs a plan: everything it says, in one change, or nothing. A plan that was run already gives
   * its receipt again and writes nothing.
   *
   * @throws Refused with an {@link ImportProblem} if rows are refused, the register has changed
   *     since, or the plan is forgotten
   */
  public ImportReceipt run(String id, Function<String, Act> act, String reason) {
    Shelf.Kept kept = shelf.needed(id);
    synchronized (kept) {
      ImportReceipt done = kept.receipt;
      if (done != null) {
        return done;
      }
      if (!kept.plan.isGood()) {
        throw new Refused(ImportProblem.HAS_PROBLEMS, kept.plan.problemCount());
      }
      ImportReceipt receipt = run(kept, act.apply(reason));
      kept.receipt = receipt;
      return receipt;
    }
  }

  private ImportReceipt run(Shelf.Kept kept, Act act) {
    RowCounts counts = kept.plan.counts();
    if (kept.steps.isEmpty()) {
      return new ImportReceipt(
          kept.plan.id(), 0, clock.instant(), act.actorName(), act.reason(), counts);
    }
    return database.write(
        act,
        tx -> {
          if (JournalStore.lockedHead(tx.sql()) != kept.head) {
            throw new Refused(ImportProblem.MOVED_ON);
          }
          Ids ids = new Ids();
          kept.steps.forEach(step -> step.run(tx, ids));
          Instant at = tx.at();
          return new ImportReceipt(
              kept.plan.id(), tx.changeId(), at, act.actorName(), act.reason(), counts);
        });
  }
}
