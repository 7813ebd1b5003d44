package loopwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Objects;
import java.util.concurrent.Callable;
import loopwright.App;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.gapround.GapRounds;
import loopwright.problem.Refused;
import loopwright.sheet.SheetProblem;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Brings a round of gap voltages in and tells which loops are worth a visit. */
@Command(
    name = "gap-round",
    mixinStandardHelpOptions = true,
    description = {
      "Brings in the present gap voltages of a plant and ranks the loops that are worth a visit.",
      "",
      "The file has the columns tag, volts, time and machine_state (rest, turning or running), and may"
          + " have measured_at, warmth and note. Like is compared with like only. Rows of unknown tags"
          + " are reported; if a row can't be read, nothing is written.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the round is in the register",
      "1:rows are refused, so nothing was written; each is named",
      "2:the file or the data can't be used; nothing was written"
    })
final class GapRoundCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "CSV file or workbook (.xlsx).")
  private @Nullable Path file;

  @Mixin private DataFolder data = new DataFolder();

  @Option(
      names = "--measured-at",
      paramLabel = "PLACE",
      description =
          "Where rows were taken that don't say: driver, barrier, rack (default) or monitor.")
  private String measuredAt = TappingPoint.RACK.label();

  @Option(names = "--most", paramLabel = "N", description = "Loops to tell of; 50 if not given.")
  private int most = 50;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Path read = Objects.requireNonNull(file);
    TappingPoint usual =
        TappingPoint.named(measuredAt)
            .orElseThrow(() -> new Refused(CliProblem.UNKNOWN_PLACE, measuredAt));
    String name = String.valueOf(read.getFileName());
    if (!Files.isRegularFile(read)) {
      throw new Refused(SheetProblem.NO_FILE, read);
    }
    try (App app = App.openExisting(data.place(), InstantSource.system())) {
      GapRounds.Brought brought =
          app.gapRounds()
              .bring(
                  new GapRounds.Given(name, read, usual, "command line"),
                  Act.ofProgram("bring in gap round", name));
      if (!brought.complaints().isEmpty()) {
        brought.complaints().kept().forEach(each -> say(each.message()));
        say(brought.complaints().total() + " things are wrong. Nothing was written.");
        return Exit.FOUND_SOMETHING;
      }
      app.gapRounds().report(brought.round(), most).forEach(this::say);
      return Exit.GOOD;
    }
  }

  private void say(String line) {
    Objects.requireNonNull(spec).commandLine().getOut().println(line);
  }
}
