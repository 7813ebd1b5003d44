package loopwright.matching.rules;

import java.util.List;
import loopwright.matching.LoopView;
import loopwright.matching.RuleBook;
import loopwright.units.Length;

/** The rules of the trade that this program judges by. */
public final class StandardRules {
  private static final RuleBook BOOK =
      new RuleBook(
          List.of(
              new Complete(),
              new LengthBalance(),
              new SameFamily(),
              new OfferedLengths(),
              new ConnectorsMate(),
              new TipAndScaleFactor(),
              new FittedOnce(),
              new FreeToUse(),
              new AreaApproval(),
              new TargetAlloy(),
              new TemperatureRatings(),
              new ChannelSettings(),
              new AxialDanger(),
              new CalibratedAsFitted()));

  private StandardRules() {}

  /** Largest length balance of either sign at which that loop still matches, inclusive. */
  public static Length lengthTolerance(LoopView loop) {
    return LengthBalance.toleranceOf(loop);
  }

  public static RuleBook book() {
    return BOOK;
  }
}
