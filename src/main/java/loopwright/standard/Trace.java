package loopwright.standard;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * That a working standard was calibrated or checked against another standard of the shop.
 *
 * @param standard the one that was calibrated or checked, by number
 * @param certificate that came of it, by number; null where it was only checked
 * @param on the day on the certificate, or of the check
 * @param reference against which
 * @param referenceCertificate of the reference, in force that day
 */
public record Trace(
    long standard,
    @Nullable Long certificate,
    LocalDate on,
    long reference,
    long referenceCertificate) {

  public boolean isCheck() {
    return certificate == null;
  }
}
