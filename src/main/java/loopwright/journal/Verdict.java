package loopwright.journal;

import org.jspecify.annotations.Nullable;

/**
 * What a verification found.
 *
 * @param entries entries read
 * @param changes changes that they make up
 * @param rows rows of tables compared with them
 * @param headHash chain hash of the last entry, hex: note it elsewhere, and a journal rewritten
 *     from there on will show
 * @param disagreement the first one; null when all agrees
 */
public record Verdict(
    long entries, long changes, long rows, String headHash, @Nullable Disagreement disagreement) {

  public boolean agrees() {
    return disagreement == null;
  }
}
