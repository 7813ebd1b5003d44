package loopwright.temporary;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import loopwright.web.PathSegment;
import org.jspecify.annotations.Nullable;

/**
 * A part that sits in a slot for a time only.
 *
 * @param words what it is
 * @param insteadOf what belongs there, in words; may be empty
 * @param firstDay by which it was to come out as first said
 * @param inThere whether it has sat there ever since
 * @param who entered it
 * @param steps oldest first
 */
record TemporaryFit(
    long id,
    long point,
    String tag,
    String slot,
    long component,
    String label,
    String words,
    String insteadOf,
    LocalDate firstDay,
    String reason,
    String askedBy,
    String who,
    Instant enteredAt,
    boolean inThere,
    List<Step> steps) {

  TemporaryFit {
    steps = List.copyOf(steps);
  }

  /**
   * What somebody settled.
   *
   * @param returnOn the other day; null where it stays for good
   */
  record Step(@Nullable LocalDate returnOn, String note, String who, Instant at) {
    boolean stays() {
      return returnOn == null;
    }
  }

  /** As it had been settled by that moment. */
  TemporaryFit asOf(Instant moment) {
    return new TemporaryFit(
        id,
        point,
        tag,
        slot,
        component,
        label,
        words,
        insteadOf,
        firstDay,
        reason,
        askedBy,
        who,
        enteredAt,
        inThere,
        steps.stream().filter(step -> !step.at().isAfter(moment)).toList());
  }

  /** The day that counts now. */
  LocalDate returnOn() {
    LocalDate day = firstDay;
    for (Step step : steps) {
      LocalDate other = step.returnOn();
      day = other == null ? day : other;
    }
    return day;
  }

  boolean staysForGood() {
    return steps.stream().anyMatch(Step::stays);
  }

  /** Whether the part still sits there and is to come out. */
  boolean isOpen() {
    return inThere && !staysForGood();
  }

  boolean isOverdue(LocalDate today) {
    return isOpen() && returnOn().isBefore(today);
  }

  String state(LocalDate today) {
    if (staysForGood()) {
      return "stays for good";
    }
    if (!inThere) {
      return "over: the part came out";
    }
    return isOverdue(today) ? "overdue" : "still temporary";
  }

  String href() {
    return "/loops/" + PathSegment.of(tag) + "/temporary";
  }

  /** {@code P-1 in probe, to come out by 2026-05-01 (instead of P-77): ordered}. */
  String inWords() {
    return "%s in %s, to come out by %s%s: %s"
        .formatted(
            label,
            slot,
            returnOn(),
            insteadOf.isEmpty() ? "" : " (instead of " + insteadOf + ")",
            reason);
  }
}
