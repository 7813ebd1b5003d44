package loopwright.db;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.Collections;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import loopwright.problem.Refused;

/** A backup being read. Nothing in it is believed before it was compared with the manifest. */
final class BackupFile implements AutoCloseable {
  private static final int LARGEST_MANIFEST = 50_000_000;

  private final Path file;
  private final ZipFile zip;
  private final Manifest manifest;

  private BackupFile(Path file, ZipFile zip, Manifest manifest) {
    this.file = file;
    this.zip = zip;
    this.manifest = manifest;
  }

  /**
   * @throws Refused {@link DbProblem#BROKEN_BACKUP} if it is none, or holds other than it says
   */
  static BackupFile open(Path file) {
    if (!Files.isRegularFile(file)) {
      throw broken(file, "there is no such file");
    }
    try {
      ZipFile zip = new ZipFile(file.toFile());
      try {
        Manifest manifest = manifest(zip);
        refuseOtherContents(file, zip, manifest);
        return new BackupFile(file, zip, manifest);
      } catch (IOException | RuntimeException wrong) {
        zip.close();
        throw wrong;
      }
    } catch (IOException unreadable) {
      throw broken(file, oneLine(unreadable));
    }
  }

  Manifest manifest() {
    return manifest;
  }

  private static Manifest manifest(ZipFile zip) throws IOException {
    ZipEntry entry = zip.getEntry(Manifest.NAME);
    if (entry == null) {
      throw new IOException("it holds no " + Manifest.NAME);
    }
    try (InputStream in = zip.getInputStream(entry)) {
      return Manifest.of(in.readNBytes(LARGEST_MANIFEST));
    }
  }

  /** Exactly the files which the manifest names, and only names that stay inside the folder. */
  private static void refuseOtherContents(Path file, ZipFile zip, Manifest manifest) {
    Set<String> named = new HashSet<>(Set.of(Manifest.NAME, Manifest.SCRIPT));
    for (Manifest.Item item : manifest.attachments()) {
      if (!staysInside(item.name()) || !named.add(item.name())) {
        throw broken(file, "its manifest names \u201c" + item.name() + "\u201d");
      }
    }
    Set<String> found = new HashSet<>();
    for (ZipEntry entry : Collections.list(zip.entries())) {
      if (!named.contains(entry.getName()) || !found.add(entry.getName())) {
        throw broken(
            file, "it holds \u201c" + entry.getName() + "\u201d, which its manifest does not name");
      }
    }
    named.removeAll(found);
    if (!named.isEmpty()) {
      throw broken(file, "it lacks " + String.join(", ", named));
    }
  }

  private static boolean staysInside(String name) {
    return name.startsWith(Manifest.ATTACHMENTS)
        && name.indexOf('\\') < 0
        && name.indexOf(':') < 0
        && List.of(name.split("/", -1)).stream()
            .noneMatch(part -> part.isBlank() || part.equals(".") || part.equals(".."));
  }

  /**
   * Copies a file out and compares its sum.
   *
   * @throws Refused {@link DbProblem#BROKEN_BACKUP} if it is not what the manifest says
   * @throws IOException if the target can't be written
   */
  void copy(Manifest.Item item, Path target) throws IOException {
    MessageDigest digest = RowText.sha256();
    try (InputStream in =
        new DigestInputStream(new Reading(zip.getInputStream(zip.getEntry(item.name()))), digest)) {
      Files.copy(new Limited(in, item.bytes() + 1), target);
    } catch (UnreadableZip damaged) {
      throw broken(file, item.name() + " is damaged: " + oneLine(damaged));
    }
    boolean same = HexFormat.of().formatHex(digest.digest()).equals(item.sha256());
    if (Files.size(target) != item.bytes() || !same) {
      throw broken(file, item.name() + " is not what its manifest says");
    }
  }

  /** Tells a damaged source from a target that can't be written. */
  private static final class UnreadableZip extends IOException {
    private static final long serialVersionUID = 1L;

    UnreadableZip(IOException because) {
      super(because.getMessage(), because);
    }
  }

  private static final class Reading extends FilterInputStream {
    Reading(InputStream in) {
      super(in);
    }

    @Override
    public int read(byte[] buffer, int from, int length) throws IOException {
      try {
        return super.read(buffer, from, length);
      } catch (IOException damaged) {
        throw new UnreadableZip(damaged);
      }
    }
  }

  /** Ends after so many bytes, so that a small file can't unfold into a huge one. */
  private static final class Limited extends FilterInputStream {
    private long left;

    Limited(InputStream in, long most) {
      super(in);
      this.left = most;
    }

    @Override
    public int read(byte[] buffer, int from, int length) throws IOException {
      if (left <= 0) {
        return -1;
      }
      int read = super.read(buffer, from, (int) Math.min(length, left));
      left -= Math.max(0, read);
      return read;
    }
  }

  static Refused broken(Path file, String why) {
    return new Refused(DbProblem.BROKEN_BACKUP, file, why);
  }

  static String oneLine(Exception thrown) {
    return String.valueOf(thrown.getMessage()).lines().findFirst().orElse("").strip();
  }

  @Override
  public void close() {
    try {
      zip.close();
    } catch (IOException afterReading) {
      throw new java.io.UncheckedIOException(afterReading);
    }
  }
}
