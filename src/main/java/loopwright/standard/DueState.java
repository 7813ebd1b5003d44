package loopwright.standard;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * What the state and due date of a reference standard ask for on a day.
 *
 * @param said in a sentence
 * @param tone word of a verdict's colour
 * @param urgency on the first page; 9 needs nobody
 */
record DueState(String said, String tone, int urgency, String nextStep) {
  private static final int NOBODY = 9;

  static DueState of(Standard standard, LocalDate today) {
    if (standard.state().equals("out of use")) {
      return new DueState("Out of use.", "not judged", NOBODY, "");
    }
    if (!standard.inUse()) {
      return new DueState(
          "It failed its last intermediate check.",
          "refused",
          2,
          "Take it out of use, and look at what it was used for since the last good check.");
    }
    Optional<Certificate> newest = standard.newest();
    if (newest.isEmpty()) {
      return new DueState(
          "No certificate is on record.", "unknown", 4, "Enter its certificate, or retire it.");
    }
    return of(newest.get().dueOn(), today);
  }

  private static DueState of(LocalDate due, LocalDate today) {
    long days = ChronoUnit.DAYS.between(today, due);
    if (days <= 0) {
      return new DueState(
          "Its certificate has been overdue since %s.".formatted(due),
          "refused",
          3,
          "Send it for calibration; what it measures can't be signed without a concession.");
    }
    if (days <= Standard.NOTICE_DAYS) {
      return new DueState(
          "Its certificate is due on %s, in %s days.".formatted(due, days),
          "attention",
          5,
          "Send it for calibration before then.");
    }
    return new DueState("Due in %s days.".formatted(days), "matches", NOBODY, "");
  }

  boolean needsSomebody() {
    return urgency < NOBODY;
  }
}
