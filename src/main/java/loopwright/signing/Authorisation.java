package loopwright.signing;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * That a person may sign or review calibrations.
 *
 * @param until the first day on which it no longer holds
 * @param basis what is on file
 * @param endedOn when it was withdrawn; null if it wasn't
 */
public record Authorisation(
    long id,
    long person,
    String name,
    Scope scope,
    LocalDate from,
    LocalDate until,
    String basis,
    String grantedBy,
    @Nullable LocalDate endedOn,
    String endReason) {

  /** As people say it. */
  public String number() {
    return "A-" + id;
  }

  boolean holdsOn(LocalDate day) {
    return !day.isBefore(from) && day.isBefore(until) && (endedOn == null || day.isBefore(endedOn));
  }

  String stateOn(LocalDate day) {
    if (endedOn != null && !day.isBefore(endedOn)) {
      return "ended";
    }
    if (day.isBefore(from)) {
      return "not yet";
    }
    return day.isBefore(until) ? "holds" : "expired";
  }
}
