package loopwright.attachment;

import java.time.Instant;

/**
 * A file as it is kept, without its content.
 *
 * @param fileName as it was called when it came
 * @param sha256 of the content, hex
 */
public record Attachment(
    long id,
    OwnerKind ownerKind,
    long ownerNumber,
    String kind,
    String fileName,
    MediaType type,
    int bytes,
    String sha256,
    String note,
    String enteredBy,
    Instant enteredAt) {

  public String href() {
    return "/files/" + id;
  }
}
