package loopwright.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Objects;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option that says where the data is. */
final class DataFolder {
  @Option(
      names = "--data",
      required = true,
      paramLabel = "DIR",
      description = "Folder of the data. No other Loopwright may have it open.")
  private @Nullable Path folder;

  Place.Folder place() {
    return new Place.Folder(Objects.requireNonNull(folder));
  }

  /** The database in it, which must be there. Close it. */
  Database open() {
    return Database.openExisting(place(), new JournalStore(), Clock.systemUTC());
  }
}
