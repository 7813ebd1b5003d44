package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import loopwright.db.Backup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes a backup of a stopped database. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = {
      "Writes everything in a data folder into one file, which restore makes a data folder from.",
      "",
      "Stop the server first, or take the backup on its pages. The file holds hashed passwords:"
          + " keep it where the data itself may be kept.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the backup is written",
      "2:it is not; standard error says why, and no file is left"
    })
final class BackupCommand implements Callable<Integer> {
  @Mixin DataFolder data = new DataFolder();

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      description = "The file to write, for instance loopwright-2026-11-24.zip; never overwritten.")
  Path file = Path.of("backup.zip");

  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Backup.Taken taken = Backup.take(data.place(), file, InstantSource.system());
    out.println(
        "Backup written: %s, %s bytes, %s rows, journal up to entry %s."
            .formatted(taken.file(), taken.bytes(), taken.rows(), taken.entries()));
    out.println("Hash of that entry: " + taken.headHash());
    return Exit.GOOD;
  }
}
