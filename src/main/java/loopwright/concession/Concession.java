package loopwright.concession;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

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

  /** One thing that became of it. */
  public record Step(String word, String who, Instant at, String note) {
    boolean ends() {
      return !word.equals("granted");
    }
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

  private Optional<Instant> grantedAt() {
    return steps.stream().filter(step -> step.word().equals("granted")).map(Step::at).findFirst();
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
