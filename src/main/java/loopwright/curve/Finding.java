package loopwright.curve;

/**
 * Something about a curve that a person should know, in a plain sentence with its numbers.
 *
 * @param kind what it is about
 * @param sentence in the unit the gaps were typed in
 */
public record Finding(Kind kind, String sentence) {

  /** What findings are about. */
  public enum Kind {
    INCOMPLETE,
    ISF_OUT,
    DSL_OUT,
    TREND,
    REVERSED,
    NOT_MONOTONE,
    DEAD,
    SATURATED,
    DRAWN_ONLY,
    NO_LINEAR_RANGE,
    HYSTERESIS,
    WORSE_RUN
  }
}
