package loopwright.db;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a backup says of itself. Its sums tell damage, not forgery: whoever can write the file can
 * write this too.
 *
 * @param format of the backup; an unknown one is not tried
 * @param program version of the program that made it
 * @param engine version of the database engine that made it
 * @param schema number of the last migration in it
 * @param counts rows by table
 * @param createdAt a moment, ISO 8601
 * @param attachments files beside the database, with names relative to their folder
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
record Manifest(
    String format,
    String program,
    String engine,
    String schema,
    @Nullable Identity installation,
    Head journal,
    Map<String, Long> counts,
    String createdAt,
    Item script,
    List<Item> attachments) {
  static final String FORMAT = "1";
  static final String NAME = "manifest.json";
  static final String SCRIPT = "script.sql";
  static final String ATTACHMENTS = "attachments/";

  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** Which database it was taken of; none for one that nobody has claimed yet. */
  record Identity(String uuid, String purpose) {}

  /** The last entry of the journal; the hash in hex. */
  record Head(long seq, String chainHash) {}

  /** A file in the backup; the sum is SHA-256 in hex. */
  record Item(String name, long bytes, String sha256) {}

  byte[] toJson() throws IOException {
    return JSON.writeValueAsBytes(this);
  }

  /**
   * @throws IOException if it is no manifest or lacks something
   */
  static Manifest of(byte[] json) throws IOException {
    Format format = JSON.reader().without(UNKNOWN).readValue(json, Format.class);
    if (!FORMAT.equals(format.format)) {
      throw new IOException("it has format " + format.format + ", which this program doesn't read");
    }
    Manifest manifest = JSON.readValue(json, Manifest.class);
    manifest.refuseGaps();
    return manifest;
  }

  private static final com.fasterxml.jackson.databind.DeserializationFeature UNKNOWN =
      com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES;

  private record Format(@Nullable String format) {}

  @SuppressWarnings("NullAway") // a reader of JSON leaves null what is not there
  private void refuseGaps() throws IOException {
    if (schema == null
        || journal == null
        || journal.chainHash == null
        || counts == null
        || script == null
        || script.sha256 == null
        || attachments == null
        || attachments.stream().anyMatch(item -> item.name == null || item.sha256 == null)) {
      throw new IOException("its manifest lacks something");
    }
  }
}
