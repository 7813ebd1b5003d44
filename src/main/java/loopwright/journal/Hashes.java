package loopwright.journal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The two hashes of the journal, both SHA-256 (FIPS 180-4). */
final class Hashes {
  /** What the first entry is chained to: 32 zero bytes. */
  static final byte[] BEFORE_THE_FIRST = new byte[32];

  private Hashes() {}

  /** Leaf hash of a Merkle tree after RFC 9162, 2.1.1: SHA-256 of a zero byte and the entry. */
  static byte[] leaf(byte[] body) {
    MessageDigest digest = sha256();
    digest.update((byte) 0);
    return digest.digest(body);
  }

  /** SHA-256 of the chain hash before and the new leaf hash. */
  static byte[] chain(byte[] before, byte[] leaf) {
    MessageDigest digest = sha256();
    digest.update(before);
    return digest.digest(leaf);
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
