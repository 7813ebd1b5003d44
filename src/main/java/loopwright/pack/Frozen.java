package loopwright.pack;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;

/** Content of packs as bytes: canonical JSON (RFC 8785), so that equal content has equal hashes. */
final class Frozen {
  private static final ObjectMapper JSON = new ObjectMapper();

  private Frozen() {}

  static String write(Object content) {
    try {
      return new JsonCanonicalizer(JSON.writeValueAsString(content)).getEncodedString();
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
  }

  static <T> T read(String json, Class<T> type) {
    try {
      return JSON.readValue(json, type);
    } catch (JsonProcessingException unreadable) {
      throw new IllegalStateException("A frozen sheet can't be read.", unreadable);
    }
  }

  /** SHA-256, hexadecimal. */
  static String hash(String text) {
    return hash(text.getBytes(StandardCharsets.UTF_8));
  }

  static String hash(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
