package loopwright.importing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.problem.Refused;
import loopwright.sheet.SheetProblem;

/**
 * A file as it was given.
 *
 * @param name shown in messages
 */
public record ImportFile(String name, byte[] bytes) {
  /** A bigger file is refused unread; this much holds some 300,000 rows. */
  static final int MOST_MEGABYTES = 40;

  private static final long MEGABYTE = 1_000_000;

  /**
   * @throws Refused with a {@link SheetProblem} if there is none, or one too large to be read
   */
  public static ImportFile of(Path path) {
    String name = String.valueOf(path.getFileName());
    try {
      if (!Files.isRegularFile(path)) {
        throw new Refused(SheetProblem.NO_FILE, path);
      }
      long size = Files.size(path);
      if (size > MOST_MEGABYTES * MEGABYTE) {
        throw new Refused(
            SheetProblem.TOO_LARGE, name, (size + MEGABYTE - 1) / MEGABYTE, MOST_MEGABYTES);
      }
      return new ImportFile(name, Files.readAllBytes(path));
    } catch (IOException unreadable) {
      Refused refused = new Refused(SheetProblem.NO_FILE, path);
      refused.initCause(unreadable);
      throw refused;
    }
  }
}
