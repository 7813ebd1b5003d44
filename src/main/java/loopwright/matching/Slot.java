package loopwright.matching;

import java.util.Optional;

/** What is known of one place in the chain. */
public sealed interface Slot {
  Slot NONE_FITTED = new NoneFitted();
  Slot NOT_RECORDED = new NotRecorded();

  static Slot of(PartView part) {
    return new Fitted(part);
  }

  /**
   * @param why for people, a clause without a full stop; may be empty
   */
  static Slot unknown(String why) {
    return new Unknown(why);
  }

  /** The part, where one is known to be fitted. */
  default Optional<PartView> part() {
    return this instanceof Fitted fitted ? Optional.of(fitted.fittedPart()) : Optional.empty();
  }

  /** Whether it is known what stands here, be it nothing. */
  default boolean isKnown() {
    return this instanceof Fitted || this instanceof NoneFitted;
  }

  /** This part stands here. */
  record Fitted(PartView fittedPart) implements Slot {}

  /** It is known that nothing stands here. */
  record NoneFitted() implements Slot {}

  /** Something stands here, or may; which part is not known any more. */
  record Unknown(String why) implements Slot {}

  /** Nobody has recorded this place yet. */
  record NotRecorded() implements Slot {}
}
