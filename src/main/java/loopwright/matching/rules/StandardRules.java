package loopwright.matching.rules;

import java.util.List;
import loopwright.matching.RuleBook;

/** The rules of the trade that this program judges by. */
public final class StandardRules {
  private static final RuleBook BOOK =
      new RuleBook(
          List.of(
              new Complete(),
              new LengthBalance(),
              new SameFamily(),
              new OfferedLengths(),
              new TipAndScaleFactor(),
              new FittedOnce(),
              new FreeToUse(),
              new CalibratedAsFitted()));

  private StandardRules() {}

  public static RuleBook book() {
    return BOOK;
  }
}
