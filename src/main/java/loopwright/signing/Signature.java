package loopwright.signing;

import java.time.Instant;

/**
 * A signature under a calibration.
 *
 * @param role {@code technician} or {@code reviewer}
 * @param name of the signer, as of then
 * @param hash SHA-256 of what was signed
 * @param concessions for standards out of date that it relied on; may be empty
 */
public record Signature(
    long calibration,
    String role,
    long person,
    String name,
    Instant at,
    long authorisation,
    String basis,
    String hash,
    String concessions) {
  static final String TECHNICIAN = "technician";
  static final String REVIEWER = "reviewer";
}
