package loopwright.field;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** What a device shows instead of a sign-in: 256 random bits, of which only the hash is kept. */
record Token(String text) {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int BYTES = 32;

  static Token fresh() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return new Token(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
  }

  String hash() {
    return sha256(text);
  }

  /** SHA-256, hex. */
  static String sha256(String text) {
    try {
      return HexFormat.of()
          .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8)));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  /** Not the token itself. */
  @Override
  public String toString() {
    return "Token[" + hash().substring(0, 8) + "]";
  }
}
