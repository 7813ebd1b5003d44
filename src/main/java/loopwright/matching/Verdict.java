package loopwright.matching;

import java.util.Collection;
import java.util.Comparator;

/** What a rule says of a loop. Declared worst first: a loop's verdict is its worst finding. */
public enum Verdict {
  /** It does not fit. */
  REFUSED("refused"),
  /** A fact is missing, so it can't be called fine. */
  UNKNOWN("unknown"),
  /** It may stay, but somebody should look. */
  ATTENTION("attention"),
  /** It fits. */
  MATCHES("matches"),
  /** The rule doesn't apply, or the source has no place for the facts it needs. */
  NOT_JUDGED("not judged");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** As people and files read it. */
  public String word() {
    return word;
  }

  public boolean isWorseThan(Verdict other) {
    return ordinal() < other.ordinal();
  }

  /** The worst of them; {@link #NOT_JUDGED} when there are none, since that worsens nothing. */
  public static Verdict worst(Collection<Verdict> verdicts) {
    return verdicts.stream().min(Comparator.naturalOrder()).orElse(NOT_JUDGED);
  }
}
