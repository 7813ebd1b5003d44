package loopwright.db;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import loopwright.problem.Refused;

/**
 * Makes a data folder from a backup. Everything is built and checked in a folder inside the new one
 * and moved to its place at the very end, the database last: what can be opened is complete.
 */
public final class Restore {
  private static final String WORKPLACE = "restoring";

  private final Path file;
  private final Path target;
  private final ChangeLog log;
  private final InstantSource clock;
  private final Function<Database, Optional<String>> check;

  private Restore(
      Path file,
      Path target,
      ChangeLog log,
      InstantSource clock,
      Function<Database, Optional<String>> check) {
    this.file = file;
    this.target = target.toAbsolutePath().normalize();
    this.log = log;
    this.clock = clock;
    this.check = check;
  }

  /**
   * What was restored.
   *
   * @param takenAt when the backup was made, ISO 8601
   * @param entries number of the journal's last entry
   * @param headHash its chain hash, hex
   */
  public record Restored(
      Path folder, String takenAt, String purpose, long rows, long entries, String headHash) {}

  /**
   * Restores into a new or empty folder.
   *
   * @param check looks through the restored database and says what is wrong with it, if anything
   * @throws Refused if the folder is not empty, or the file is no backup or a damaged one, or what
   *     it holds does not pass the check; then nothing is left in the folder
   */
  public static Restored from(
      Path file,
      Path target,
      ChangeLog log,
      InstantSource clock,
      Function<Database, Optional<String>> check) {
    return new Restore(file, target, log, clock, check).run();
  }

  private Restored run() {
    boolean made = !Files.exists(target);
    refuseNotEmpty();
    try (BackupFile backup = BackupFile.open(file)) {
      Path workplace = Files.createDirectories(target.resolve(WORKPLACE));
      Manifest manifest = backup.manifest();
      build(backup, new Place.Folder(workplace));
      moveUp(workplace);
      return restored(manifest);
    } catch (IOException unwritable) {
      clear(made);
      Refused refused = new Refused(DbProblem.UNWRITABLE, target, BackupFile.oneLine(unwritable));
      refused.initCause(unwritable);
      throw refused;
    } catch (RuntimeException failed) {
      clear(made);
      throw failed;
    }
  }

  private void refuseNotEmpty() {
    if (!Files.exists(target)) {
      return;
    }
    try (Stream<Path> inside = Files.list(target)) {
      if (inside.findAny().isPresent()) {
        throw new Refused(DbProblem.NOT_EMPTY, target);
      }
    } catch (IOException noFolder) {
      throw new Refused(DbProblem.NOT_EMPTY, target);
    }
  }

  private void build(BackupFile backup, Place.Folder place) throws IOException {
    Manifest manifest = backup.manifest();
    Path script = place.folder().resolve(Manifest.SCRIPT);
    backup.copy(manifest.script(), script);
    for (Manifest.Item attachment : manifest.attachments()) {
      Path copy = place.folder().resolve(attachment.name());
      Files.createDirectories(Objects.requireNonNull(copy.getParent()));
      backup.copy(attachment, copy);
    }
    EngineVersion.refuseOther(place); // writes the note into the empty folder
    try {
      BackupScript.run(script, place);
    } catch (BackupScript.Wrong wrong) {
      throw BackupFile.broken(file, String.valueOf(wrong.getMessage()));
    }
    Files.delete(script);
    compare(place, manifest);
    lookThrough(place);
  }

  /** Before the tables are migrated: what came in is what went out. */
  private void compare(Place.Folder place, Manifest manifest) {
    try (Connection owner = Database.ownerConnection(place)) {
      Contents contents = Contents.of(owner);
      if (!contents.head().equals(manifest.journal())) {
        throw BackupFile.broken(file, "its journal does not end as its manifest says");
      }
      for (Map.Entry<String, Long> count : manifest.counts().entrySet()) {
        Long found = contents.counts().get(count.getKey());
        if (!count.getValue().equals(found)) {
          throw BackupFile.broken(
              file,
              "its manifest counts %s rows of %s, its script makes %s"
                  .formatted(count.getValue(), count.getKey(), found == null ? "none" : found));
        }
      }
    } catch (SQLException unreadable) {
      throw Damage.refusal(place, unreadable);
    }
  }

  private void lookThrough(Place.Folder place) {
    try (Database database = Database.open(place, log, clock)) {
      check
          .apply(database)
          .ifPresent(
              wrong -> {
                throw BackupFile.broken(file, "what it holds disagrees: " + wrong);
              });
    }
  }

  /** The database file comes last. */
  private void moveUp(Path workplace) throws IOException {
    Path database = new Place.Folder(workplace).file();
    try (Stream<Path> inside = Files.list(workplace)) {
      List<Path> rest = inside.filter(each -> !each.equals(database)).toList();
      for (Path each : rest) {
        Files.move(each, target.resolve(each.getFileName()));
      }
    }
    Files.move(database, target.resolve(database.getFileName()));
    Files.delete(workplace);
  }

  private void clear(boolean made) {
    try (Stream<Path> inside = Files.walk(target)) {
      inside
          .sorted(Comparator.reverseOrder())
          .filter(each -> made || !each.equals(target))
          .forEach(Backup::discard);
    } catch (IOException | UncheckedIOException nothingThere) {
      // the folder could not even be made
    }
  }

  private Restored restored(Manifest manifest) {
    Manifest.Identity identity = manifest.installation();
    return new Restored(
        target,
        manifest.createdAt(),
        identity == null ? "unclaimed" : identity.purpose(),
        manifest.counts().values().stream().mapToLong(Long::longValue).sum(),
        manifest.journal().seq(),
        manifest.journal().chainHash());
  }
}
