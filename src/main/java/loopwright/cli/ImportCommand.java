package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.App;
import loopwright.db.Act;
import loopwright.db.Place;
import loopwright.importing.DecimalMark;
import loopwright.importing.Fate;
import loopwright.importing.ImportFile;
import loopwright.importing.ImportPlan;
import loopwright.importing.Importing;
import loopwright.importing.RowFate;
import loopwright.problem.Refused;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaint;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Imports a shop's files: all of it or nothing. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description = {
      "Brings a shop's CSV files into the register.",
      "",
      "Files hold families, components, points, placements or calibrations and are known by their"
          + " headings. They are planned together; if any row is refused, nothing is written. The"
          + " same files again change nothing.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:everything is in the register (or would be, with --dry-run)",
      "1:rows are refused, so nothing was written; each is named",
      "2:a file or the data can't be used; nothing was written"
    })
final class ImportCommand implements Callable<Integer> {

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "CSV files, taken as one import.")
  private List<Path> files = List.of();

  @Mixin private DataFolder data = new DataFolder();

  @Option(names = "--dry-run", description = "Say what would become of every row; write nothing.")
  private boolean dryRun;

  @Option(names = "--json", description = "One JSON document instead of lines.")
  private boolean json;

  @Option(
      names = "--decimal",
      paramLabel = "MARK",
      description =
          "Decimal mark of all files: point or comma. Without it each file is read as its own"
              + " numbers show, and what could be read in two ways is refused.")
  private @Nullable String decimal;

  @Option(names = "--reason", paramLabel = "TEXT", description = "Why, for the journal.")
  private String reason = "";

  @Spec private @Nullable CommandSpec spec;

  /** As printed. */
  record Document(int added, int changed, int unchanged, List<RefusedRow> refused) {
    static Document of(ImportPlan plan) {
      return new Document(
          plan.counts().added(),
          plan.counts().changed(),
          plan.counts().unchanged(),
          plan.problems().stream().map(RefusedRow::of).toList());
    }
  }

  /**
   * @param row 0 when the file as a whole is refused
   */
  record RefusedRow(String file, int row, String column, String code, String message) {
    static RefusedRow of(Complaint complaint) {
      return new RefusedRow(
          complaint.file(),
          complaint.row(),
          complaint.column(),
          complaint.code(),
          complaint.message());
    }
  }

  @Override
  public Integer call() {
    List<ImportFile> read = files.stream().map(ImportFile::of).toList();
    try (App app = open()) {
      ImportPlan plan = app.importing().plan(read, mark());
      if (plan.isToWrite() && !dryRun) {
        app.importing().run(plan.id(), why -> Act.ofProgram(Importing.ACT, why), reason());
      }
      print(plan);
      return plan.unusable() ? Exit.UNUSABLE : plan.isGood() ? Exit.GOOD : Exit.FOUND_SOMETHING;
    }
  }

  /** A dry run where there is no data yet makes none. */
  private App open() {
    Place.Folder place = data.place();
    boolean makesNone = dryRun && !place.exists();
    return App.open(makesNone ? new Place.Memory("dry-run") : place, InstantSource.system());
  }

  private Optional<DecimalMark> mark() {
    String typed = decimal;
    if (typed == null) {
      return Optional.empty();
    }
    return Optional.of(
        DecimalMark.named(typed).orElseThrow(() -> new Refused(CliProblem.UNKNOWN_MARK, typed)));
  }

  private String reason() {
    return reason.isBlank()
        ? "Imported "
            + String.join(", ", files.stream().map(f -> f.getFileName().toString()).toList())
        : reason;
  }

  private void print(ImportPlan plan) {
    if (json) {
      Json.print(out(), Document.of(plan));
      return;
    }
    plan.rows().stream().filter(row -> row.fate() == Fate.CHANGED).forEach(this::changed);
    complaints(plan);
    out().println(summary(plan));
  }

  private void changed(RowFate row) {
    row.changes()
        .forEach(
            change ->
                out()
                    .println(
                        "%s, row %s: %s, %s: %s → %s"
                            .formatted(
                                row.file(),
                                row.row(),
                                row.what(),
                                change.field(),
                                change.before().isEmpty() ? "nothing" : change.before(),
                                change.after())));
  }

  private void complaints(ImportPlan plan) {
    PrintWriter err = spec().commandLine().getErr();
    plan.problems().stream().map(Complaint::message).map(Cells::oneLine).forEach(err::println);
    int more = plan.problemCount() - plan.problems().size();
    if (more > 0) {
      err.println("… and " + more + " more.");
    }
  }

  private String summary(ImportPlan plan) {
    String counts =
        "%s added, %s changed, %s unchanged, %s refused"
            .formatted(
                plan.counts().added(),
                plan.counts().changed(),
                plan.counts().unchanged(),
                plan.counts().refused());
    if (!plan.isGood()) {
      return "Nothing was written: " + counts + ".";
    }
    if (!plan.isToWrite()) {
      return "Nothing to write: " + counts + ".";
    }
    return (dryRun ? "Would be written: " : "Written: ") + counts + ".";
  }

  private PrintWriter out() {
    return spec().commandLine().getOut();
  }

  private CommandSpec spec() {
    return Objects.requireNonNull(spec);
  }
}
