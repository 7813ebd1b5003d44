package loopwright.concession;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A concession as it was asked for, and what became of it.
 *
 * @param fingerprint of the parts it is bound to, see {@link loopwright.loop.Combinations}
 * @param rules names of the rules it covers
 * @param measure what is done meanwhile to make up for it
 * @param steps oldest first
 */
public record Concession(
    long id,
    long point,
    String tag,
    String fingerprint,
    ConcessionKind kind,
    List<String> rules,
    String reason,
    String measure,
    long askedBy,
    String askedByName,
    Instant askedAt,
    Instant expiresAt,
    List<Step> steps) {

  /** So long before its end somebody has to see to it (own choice). */
  static final Duration NOTICE = Duration.ofDays(14);

  public Concession {
    rules = List.copyOf(rules);
    steps = List.copyOf(steps);
  }

  /**
   * One thing that became of it.
   *
   * @param change that entered it
   */
  public record Step(String word, String who, Instant at, String note, long change) {
    boolean ends() {
      return !word.equals("granted");
    }
  }

  /** The same as it was known when the record held only these changes. */
  Concession asKnownBy(Set<Long> changes) {
    List<Step> known = steps.stream().filter(step -> changes.contains(step.change())).toList();
    return new Concession(
        id,
        point,
        tag,
        fingerprint,
        kind,
        rules,
        reason,
        measure,
        askedBy,
        askedByName,
        askedAt,
        expiresAt,
        known);
  }

  /** As people say it. */
  public String number() {
    return "CN-" + id;
  }

  /** Whether it stands at that moment. */
  public boolean standsAt(Instant moment) {
    return grantedAt().filter(granted -> !granted.isAfter(moment)).isPresent()
        && moment.isBefore(endsAt());
  }

  /** From the minute of the grant on, because people give moments of work to the minute. */
  private Optional<Instant> grantedAt() {
    return steps.stream()
        .filter(step -> step.word().equals("granted"))
        .map(step -> step.at().truncatedTo(ChronoUnit.MINUTES))
        .findFirst();
  }

  /** When it was ended, else when it will expire. */
  Instant endsAt() {
    return steps.stream()
        .filter(Step::ends)
        .map(Step::at)
        .filter(end -> end.isBefore(expiresAt))
        .findFirst()
        .orElse(expiresAt);
  }

  /** {@code waiting}, {@code stands}, {@code declined}, {@code withdrawn}, {@code ended} …. */
  public String stateAt(Instant moment) {
    Optional<Step> end = steps.stream().filter(Step::ends).findFirst();
    if (end.isPresent()) {
      return end.get().word().equals("exchanged") ? "ended by exchange" : end.get().word();
    }
    if (!moment.isBefore(expiresAt)) {
      return "expired";
    }
    return grantedAt().isPresent() ? "stands" : "waiting";
  }

  boolean waitsAt(Instant moment) {
    return stateAt(moment).equals("waiting");
  }

  /** Whether its end is near enough for somebody to see to it. */
  boolean soonEnds(Instant moment) {
    return !moment.isBefore(endsAt().minus(NOTICE));
  }
}
