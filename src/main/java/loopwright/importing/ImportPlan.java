package loopwright.importing;

import java.time.Instant;
import java.util.List;
import loopwright.sheet.Complaint;

/**
 * What an import would do, row by row; nothing of it is written yet.
 *
 * @param id by which exactly this plan is run
 * @param files in the order given
 * @param rows every row's fate, in the order of files and lines
 * @param problems all that is wrong; past ten thousand only {@code problemCount} goes on
 * @param unusable a file can't be read at all, or its headings can't
 */
public record ImportPlan(
    String id,
    Instant madeAt,
    List<PlannedFile> files,
    List<RowFate> rows,
    RowCounts counts,
    List<Complaint> problems,
    int problemCount,
    boolean unusable) {

  /**
   * A file as it was understood, to be shown before anything is written.
   *
   * @param holds what it holds; {@code nothing that is known} when it can't be read
   * @param separator in words
   */
  public record PlannedFile(String name, String holds, String separator, RowCounts counts) {}

  /** Nothing stands against running it. */
  public boolean isGood() {
    return problemCount == 0 && !unusable && counts.refused() == 0;
  }

  /** It adds or changes families, which not everybody decides on. */
  public boolean touchesFamilies() {
    return files.stream()
        .anyMatch(
            file -> file.holds().equals(FileKind.FAMILIES.word()) && file.counts().toWrite() > 0);
  }

  /** There is something to write. */
  public boolean isToWrite() {
    return isGood() && counts.toWrite() > 0;
  }
}
