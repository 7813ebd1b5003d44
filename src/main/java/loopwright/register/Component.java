package loopwright.register;

import loopwright.matching.PartKind;
import loopwright.matching.PartState;

/**
 * A part with what is believed of it now.
 *
 * @param state follows from condition and placement
 * @param version grows with each change
 */
public record Component(
    ComponentId id, ComponentDetails details, ComponentFacts facts, PartState state, int version) {
  public PartKind kind() {
    return details.kind();
  }

  public String label() {
    return details.identity().label();
  }

  /** For sentences: {@code extension cable XC-51733}. */
  public String inWords() {
    return details.inWords();
  }
}
