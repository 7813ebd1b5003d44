package loopwright.db;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.erdtman.jcs.NumberToJSON;
import org.jooq.Field;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;

/**
 * Rows as text, the same on every engine: what the journal keeps and what verification compares.
 * Absent values are left out, so a column added later changes no old row. Secrets are left out too.
 */
public final class RowText {
  private static final Set<String> KEPT_OUT = Set.of("password_hash");

  private RowText() {}

  /** Column (lower case) to text, sorted. */
  public static Map<String, String> of(Record row) {
    Map<String, String> texts = new TreeMap<>();
    for (Field<?> field : row.fields()) {
      put(texts, field, row.get(field));
    }
    return texts;
  }

  static void put(Map<String, String> texts, Field<?> field, @Nullable Object content) {
    String name = field.getName().toLowerCase(Locale.ROOT);
    if (content != null && !KEPT_OUT.contains(name)) {
      texts.put(name, text(content));
    }
  }

  private static String text(Object content) {
    if (content instanceof BigDecimal number) {
      return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
    if (content instanceof Double number) {
      return ofDouble(number);
    }
    if (content instanceof OffsetDateTime moment) {
      return moment.toInstant().truncatedTo(ChronoUnit.MICROS).toString();
    }
    if (content instanceof Instant moment) {
      return moment.truncatedTo(ChronoUnit.MICROS).toString();
    }
    if (content instanceof byte[] bytes) {
      return HexFormat.of().formatHex(bytes);
    }
    return content.toString();
  }

  /** As RFC 8785 writes it: Java's own text of a double differs between Java versions. */
  private static String ofDouble(double number) {
    try {
      return NumberToJSON.serializeNumber(number);
    } catch (IOException notFinite) {
      throw new IllegalArgumentException("A row can't hold " + number + ".", notFinite);
    }
  }

  /**
   * SHA-256, hex, over the rows' columns in order, each name and text with its length before it.
   */
  public static String hash(List<Map<String, String>> rows) {
    MessageDigest digest = sha256();
    for (Map<String, String> row : rows) {
      for (Map.Entry<String, String> column : new TreeMap<>(row).entrySet()) {
        feed(digest, column.getKey());
        feed(digest, column.getValue());
      }
      digest.update((byte) '\n');
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static void feed(MessageDigest digest, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    digest.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
    digest.update(bytes);
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
