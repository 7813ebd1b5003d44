package loopwright.register;

import loopwright.time.Span;
import org.jspecify.annotations.Nullable;

/**
 * Facts believed of a part over a range of moments.
 *
 * @param number of the belief; 0 while it is new
 * @param givenUp the change that ended it; null while it is held
 */
public record Belief(
    long number,
    ComponentFacts facts,
    Span span,
    @Nullable ChangeNote made,
    @Nullable ChangeNote givenUp) {

  static Belief fresh(ComponentFacts facts, Span span) {
    return new Belief(0, facts, span, null, null);
  }

  public boolean isHeld() {
    return givenUp == null;
  }
}
