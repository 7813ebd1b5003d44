package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.db.Database;
import loopwright.db.Restore;
import loopwright.journal.Disagreement;
import loopwright.journal.JournalStore;
import loopwright.journal.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a data folder from a backup. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a data folder from a backup and verifies it before it is put in place.",
      "",
      "Afterwards start the server on that folder. People sign in as they did when the backup was"
          + " taken.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the data is restored; journal and tables agree",
      "2:it is not; standard error says why, and nothing is left in the folder"
    })
final class RestoreCommand implements Callable<Integer> {
  @Option(
      names = "--from",
      required = true,
      paramLabel = "FILE",
      description = "A file that backup wrote.")
  Path file = Path.of("backup.zip");

  @Option(
      names = "--data",
      required = true,
      paramLabel = "DIR",
      description = "A new or empty folder.")
  Path folder = Path.of("data");

  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Restore.Restored restored =
        Restore.from(
            file, folder, new JournalStore(), InstantSource.system(), RestoreCommand::disagreement);
    out.println(
        "Restored into %s: %s rows, journal up to entry %s, as of %s. Journal and tables agree."
            .formatted(restored.folder(), restored.rows(), restored.entries(), restored.takenAt()));
    out.println("Hash of that entry: " + restored.headHash());
    return Exit.GOOD;
  }

  private static Optional<String> disagreement(Database database) {
    return Optional.ofNullable(Verification.of(database).disagreement())
        .map(Disagreement::sentence);
  }
}
