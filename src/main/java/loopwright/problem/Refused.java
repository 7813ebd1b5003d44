package loopwright.problem;

import java.util.List;
import java.util.Objects;

/**
 * Something was refused for a published reason. Carries a {@link Problem}; never used for failures
 * of the program itself. Unchecked, so that a refusal inside a transaction rolls it back unchanged.
 */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;
  private final transient List<String> parts;

  public Refused(Problem problem, Object... parts) {
    super(say(problem, parts));
    this.problem = problem;
    this.parts = List.of(parts).stream().map(String::valueOf).toList();
  }

  /** The sentence with its parts filled in. */
  @Override
  public String getMessage() {
    return Objects.requireNonNull(super.getMessage());
  }

  public Problem problem() {
    return problem;
  }

  public List<String> parts() {
    return parts;
  }

  /** The sentence with its parts filled in; a brace that is no placeholder stays as it is. */
  public static String say(Problem problem, Object... parts) {
    String sentence = problem.sentence();
    for (int i = 0; i < parts.length; i++) {
      sentence = sentence.replace("{" + i + "}", String.valueOf(parts[i]));
    }
    return sentence;
  }
}
