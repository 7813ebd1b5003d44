package loopwright.signing;

import java.time.LocalDate;

/**
 * Permission to sign for calibrations made with a standard whose certificate was out of date.
 *
 * @param until calibrations taken before this day are covered
 */
record StandardConcession(
    long id,
    long certificate,
    long grantedBy,
    String grantedByName,
    LocalDate until,
    String reason,
    String measure) {

  public String number() {
    return "SC-" + id;
  }

  boolean covers(long certificateUsed, LocalDate day, long signer) {
    return certificate == certificateUsed && day.isBefore(until) && grantedBy != signer;
  }
}
