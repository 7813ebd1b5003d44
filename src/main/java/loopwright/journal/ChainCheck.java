package loopwright.journal;

import java.util.Arrays;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/**
 * Follows the chain from entry to entry: numbers without gaps, each hash made of the one before,
 * the parts of a change one after the other until its last.
 */
final class ChainCheck {
  private long seq;
  private byte[] chain = Hashes.BEFORE_THE_FIRST;
  private long changes;
  private @Nullable EntryBody open;

  /** Takes the next entry. */
  void follow(CheckedEntry entry) {
    StoredEntry stored = entry.stored();
    if (stored.seq() != seq + 1) {
      throw gap(stored.seq()).found();
    }
    seq = stored.seq();
    if (entry.unreadable() != null) {
      throw entry.unreadable();
    }
    if (entry.wrong() != null) {
      throw entry.wrong().found();
    }
    chain = Hashes.chain(chain, stored.leafHash());
    if (!Arrays.equals(chain, stored.chainHash())) {
      String before = seq == 1 ? "the beginning" : "entry " + (seq - 1);
      throw Disagreement.ofEntry(seq, "its chain hash does not follow from " + before + ".")
          .found();
    }
    if (entry.body() != null) {
      parts(entry.body());
    }
  }

  private Disagreement gap(long found) {
    long missing = seq + 1;
    return found < missing
        ? Disagreement.ofEntry(found, "numbers begin at 1.")
        : Disagreement.ofEntry(
            missing, "it is missing; entry " + found + " comes after entry " + seq + ".");
  }

  private void parts(EntryBody body) {
    int expected = open == null ? 1 : open.part() + 1;
    if (open != null && open.change() != body.change()) {
      throw incomplete(open).found();
    }
    if (body.part() != expected) {
      throw Disagreement.ofEntry(
              body.seq(),
              "it is part %s of change %s, where part %s is due."
                  .formatted(body.part(), body.change(), expected))
          .found();
    }
    open = body.last() ? null : body;
    changes += body.last() ? 1 : 0;
  }

  private static Disagreement incomplete(EntryBody open) {
    return Disagreement.ofEntry(
        open.seq(),
        "change " + open.change() + " is not completed after its part " + open.part() + ".");
  }

  /** After the last entry: the last change is complete and the head says the same. */
  void end(VerificationStore.@Nullable Head head) {
    if (open != null) {
      throw incomplete(open).found();
    }
    if (head == null) {
      throw Disagreement.ofJournal("The row that holds the journal's head is missing.").found();
    }
    if (head.seq() != seq) {
      throw Disagreement.ofJournal(
              "The journal's head says entry %s, but the last entry is %s."
                  .formatted(head.seq(), seq))
          .found();
    }
    if (!Arrays.equals(head.chainHash(), chain)) {
      throw Disagreement.ofJournal(
              "The journal's head holds another hash than its last entry, " + seq + ".")
          .found();
    }
  }

  /** How many entries came. */
  long entries() {
    return seq;
  }

  /** How many changes were completed. */
  long changes() {
    return changes;
  }

  /** The chain hash of the last entry, hex. */
  String hash() {
    return HexFormat.of().formatHex(chain);
  }
}
