package loopwright.fieldcheck;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A check as it is kept.
 *
 * @param fingerprint of the parts fitted then, where that was known
 * @param verdict the worst of what was found, in a word
 * @param said as told then
 * @param profileVersion whose response band judged it
 */
record FieldCheck(
    long id,
    long point,
    String tag,
    Optional<String> fingerprint,
    CheckKind kind,
    Instant takenAt,
    String takenBy,
    Entries entries,
    String verdict,
    List<Said> said,
    String note,
    String enteredBy,
    Instant enteredAt,
    String reason,
    long change,
    Optional<Long> profileVersion) {

  /** As people call it. */
  String number() {
    return "J-" + id;
  }

  String href() {
    return "/checks/" + number();
  }
}
