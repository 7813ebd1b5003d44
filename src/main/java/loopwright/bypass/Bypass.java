package loopwright.bypass;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A protective function that is inhibited, or was.
 *
 * @param outage number of the outage it belongs to; null when to none
 * @param siteNumber under which the site's procedure keeps it
 * @param inhibited which function, in words
 * @param voteMeanwhile how the group votes meanwhile
 * @param owner who answers for it; hand-overs change that once they are acknowledged
 * @param steps oldest first
 */
public record Bypass(
    long id,
    long point,
    String tag,
    @Nullable Long outage,
    String siteNumber,
    String inhibited,
    String voteMeanwhile,
    String authoriser,
    String owner,
    Instant began,
    Instant expires,
    String enteredBy,
    Instant enteredAt,
    List<Step> steps) {

  public Bypass {
    steps = List.copyOf(steps);
  }

  /**
   * Something that became of it.
   *
   * @param word {@code handed over}, {@code acknowledged}, {@code removed} or {@code proved}
   * @param person number of who did it
   * @param enteredBy number of who entered it: somebody else where it came back on a sheet
   * @param toWhom new owner of a hand-over and of its acknowledgement; empty otherwise
   */
  public record Step(
      String word,
      long person,
      long enteredBy,
      String who,
      String toWhom,
      Instant at,
      String note) {}

  static final String HANDED_OVER = "handed over";
  static final String ACKNOWLEDGED = "acknowledged";
  static final String REMOVED = "removed";
  static final String PROVED = "proved";

  /** As people say it. */
  public String number() {
    return "BY-" + id;
  }

  public String href() {
    return "/bypasses/" + number();
  }

  private Optional<Step> step(String word) {
    return steps.stream().filter(step -> step.word().equals(word)).findFirst();
  }

  Optional<Step> removed() {
    return step(REMOVED);
  }

  /** Until a second person proved that it is off. */
  public boolean isOpen() {
    return step(PROVED).isEmpty();
  }

  public boolean isOverdue(Instant now) {
    return isOpen() && !now.isBefore(expires);
  }

  /** Whether a sheet tells the same of it as was entered. */
  public boolean isToldBy(NewBypass sheet) {
    return inhibited.equalsIgnoreCase(sheet.inhibited())
        && voteMeanwhile.equalsIgnoreCase(sheet.voteMeanwhile())
        && authoriser.equalsIgnoreCase(sheet.authoriser())
        && owner.equalsIgnoreCase(sheet.owner())
        && began.equals(sheet.began())
        && expires.equals(sheet.expires());
  }

  /** Whether it is said to be off, proved or not. */
  public boolean isRemoved() {
    return removed().isPresent();
  }

  /** Who answers for it now: whoever took it over last, or the first. */
  public String ownerNow() {
    return steps.stream()
        .filter(step -> step.word().equals(ACKNOWLEDGED))
        .reduce((first, second) -> second)
        .map(Step::toWhom)
        .orElse(owner);
  }

  /** The hand-over that nobody has acknowledged yet. */
  Optional<Step> pending() {
    return steps.stream()
        .filter(step -> step.word().equals(HANDED_OVER) || step.word().equals(ACKNOWLEDGED))
        .reduce((first, second) -> second)
        .filter(step -> step.word().equals(HANDED_OVER));
  }

  /** In words. */
  public String stateAt(Instant now) {
    if (!isOpen()) {
      return "off, proved";
    }
    String overdue = isOverdue(now) ? ", overdue" : "";
    return (removed().isPresent() ? "removed, not proved" : "on") + overdue;
  }
}
