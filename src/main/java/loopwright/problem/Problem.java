package loopwright.problem;

/**
 * A published reason for refusing something. Each feature keeps its reasons in an enum that
 * implements this; codes are unique across the program and never reused once retired.
 */
public interface Problem {
  /** Short stable code, for instance {@code S-101}. */
  String code();

  /**
   * What went wrong and what would be right, in one or two sentences; {@code {0}}, {@code {1}} …
   * stand for the parts given to {@link Refused}.
   */
  String sentence();
}
