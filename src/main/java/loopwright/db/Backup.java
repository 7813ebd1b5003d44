package loopwright.db;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * One file from which everything can be had again: the database as an SQL script, which outlives
 * the engine's own file format, the files beside it, and a manifest to check them by. It holds the
 * hashed passwords and everything else: keep it where the data itself may be kept.
 */
public final class Backup {
  private static final String SCRIPT_SQL = "SCRIPT NOPASSWORDS NOSETTINGS TO %s CHARSET 'UTF-8'";

  private final Place place;
  private final boolean running;
  private final Path file;
  private final InstantSource clock;

  private Backup(Place place, boolean running, Path file, InstantSource clock) {
    this.place = place;
    this.running = running;
    this.file = file.toAbsolutePath().normalize();
    this.clock = clock;
  }

  /**
   * What was written.
   *
   * @param entries number of the journal's last entry in it
   * @param headHash its chain hash, hex
   */
  public record Taken(Path file, long bytes, long rows, long entries, String headHash) {}

  /**
   * Backs up a running database: everything as of one moment, while others read and write.
   *
   * @throws Refused if the file exists, can't be written, or the database is a server's
   */
  public static Taken take(Database database, Path file, InstantSource clock) {
    return new Backup(database.place(), true, file, clock).take();
  }

  /**
   * Backs up a stopped database without changing it, whatever the version of its tables.
   *
   * @throws Refused if there is none, it is in use or of another engine, or the file exists or
   *     can't be written
   */
  public static Taken take(Place.Folder place, Path file, InstantSource clock) {
    Database.refuseMissing(place);
    EngineVersion.refuseOther(place);
    return new Backup(place, false, file, clock).take();
  }

  private Taken take() {
    if (!(place instanceof Place.Folder folder)) {
      throw new Refused(DbProblem.SERVERS_OWN);
    }
    refuseTarget();
    Path copy = beside(".copy");
    Path script = beside(".script");
    Path unfinished = beside(".unfinished");
    try {
      Manifest manifest = dump(running ? copied(copy) : folder, script);
      pack(unfinished, script, manifest);
      Files.move(unfinished, file);
      long rows = manifest.counts().values().stream().mapToLong(Long::longValue).sum();
      Manifest.Head head = manifest.journal();
      return new Taken(file, Files.size(file), rows, head.seq(), head.chainHash());
    } catch (IOException unwritable) {
      throw refused(new Refused(DbProblem.UNWRITABLE, file, unwritable), unwritable);
    } catch (SQLException unreadable) {
      throw Damage.refusal(place, unreadable);
    } finally {
      discardAll(copy);
      discard(script);
      discard(unfinished);
    }
  }

  private void refuseTarget() {
    Path folder = file.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new Refused(DbProblem.NO_FOLDER, String.valueOf(folder));
    }
    if (Files.exists(file)) {
      throw new Refused(DbProblem.FILE_EXISTS, file);
    }
  }

  private Path beside(String ending) {
    return file.resolveSibling("." + file.getFileName() + ending);
  }

  /**
   * The engine's own copy of a database in use is of one moment; a script, statement by statement,
   * would not be.
   */
  private Place.Folder copied(Path workplace) throws SQLException, IOException {
    Place.Folder copy = new Place.Folder(Files.createDirectories(workplace));
    Path zipped = workplace.resolve("copy.zip");
    try (Connection owner = Database.ownerConnection(place);
        Statement statement = owner.createStatement()) {
      statement.execute("BACKUP TO " + quoted(zipped));
    }
    try (ZipFile zip = new ZipFile(zipped.toFile());
        InputStream in = zip.getInputStream(zip.getEntry(copy.file().getFileName().toString()))) {
      Files.copy(in, copy.file());
    }
    return copy;
  }

  private static String quoted(Path path) {
    return "'" + path.toString().replace("'", "''") + "'";
  }

  private Manifest dump(Place.Folder from, Path script) throws SQLException, IOException {
    Files.write(script, new byte[0]);
    try (Connection owner = Database.ownerConnection(from);
        Statement statement = owner.createStatement()) {
      statement.execute(SCRIPT_SQL.formatted(quoted(script)));
      Contents contents = Contents.of(owner);
      return new Manifest(
          Manifest.FORMAT,
          program(),
          EngineVersion.current(),
          contents.schema(),
          contents.installation(),
          contents.head(),
          contents.counts(),
          clock.instant().toString(),
          item(Manifest.SCRIPT, script),
          attachments());
    }
  }

  private static String program() {
    String version = Backup.class.getPackage().getImplementationVersion();
    return version == null ? "not packaged" : version;
  }

  private List<Manifest.Item> attachments() throws IOException {
    Path folder = attachmentsOf(place);
    if (folder == null || !Files.isDirectory(folder)) {
      return List.of();
    }
    List<Manifest.Item> items = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.filter(Files::isRegularFile).sorted().toList()) {
        String name = folder.relativize(each).toString().replace('\\', '/');
        items.add(item(Manifest.ATTACHMENTS + name, each));
      }
    }
    return items;
  }

  private static @Nullable Path attachmentsOf(Place place) {
    return place instanceof Place.Folder folder ? folder.folder().resolve("attachments") : null;
  }

  private static Manifest.Item item(String name, Path file) throws IOException {
    MessageDigest digest = RowText.sha256();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      long bytes = in.transferTo(OutputStream.nullOutputStream());
      return new Manifest.Item(name, bytes, HexFormat.of().formatHex(digest.digest()));
    }
  }

  private void pack(Path unfinished, Path script, Manifest manifest) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(unfinished))) {
      zip.putNextEntry(new ZipEntry(Manifest.NAME));
      zip.write(manifest.toJson());
      put(zip, Manifest.SCRIPT, script);
      for (Manifest.Item attachment : manifest.attachments()) {
        String name = attachment.name().substring(Manifest.ATTACHMENTS.length());
        put(zip, attachment.name(), Objects.requireNonNull(attachmentsOf(place)).resolve(name));
      }
    }
    try (FileChannel written = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
      written.force(true);
    }
  }

  private static void put(ZipOutputStream zip, String name, Path file) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    Files.copy(file, zip);
  }

  /** Removes a folder with all that is in it, if it is there. */
  static void discardAll(Path folder) {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> inside = Files.walk(folder)) {
      inside.sorted(Comparator.reverseOrder()).forEach(Backup::discard);
    } catch (IOException stays) {
      folder.toFile().deleteOnExit();
    }
  }

  static void discard(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException stays) {
      file.toFile().deleteOnExit();
    }
  }

  private static Refused refused(Refused refused, Throwable because) {
    refused.initCause(because);
    return refused;
  }
}
