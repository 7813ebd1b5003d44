package loopwright.plant;

import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a channel does now, put together from what it was told and what was read out of it: the
 * later of the two leads, at one moment what was found; the other one fills what it leaves open.
 */
final class ToldAndFound {
  private final ChannelSetting leading;
  private final ChannelSetting filling;

  private ToldAndFound(ChannelSetting leading, ChannelSetting filling) {
    this.leading = leading;
    this.filling = filling;
  }

  /** At least one of the two is there. */
  static ToldAndFound of(@Nullable ChannelSetting approved, @Nullable ChannelSetting found) {
    if (approved == null || found == null) {
      ChannelSetting only = approved == null ? found : approved;
      if (only == null) {
        throw new IllegalArgumentException("A channel without any setting has nothing to show.");
      }
      return new ToldAndFound(only, only);
    }
    return approved.from().isAfter(found.from())
        ? new ToldAndFound(approved, found)
        : new ToldAndFound(found, approved);
  }

  ChannelInForce inForce(String name) {
    @Nullable ScaleFactor scale = leading.scaleFactor();
    Unit unit = unit();
    return new ChannelInForce(
        name,
        scale == null ? filling.scaleFactor() : scale,
        scale == null || leading.scaleReason().isEmpty() && sameScale()
            ? filling.scaleReason()
            : leading.scaleReason(),
        level(leading.fullScale(), filling.fullScale(), unit),
        level(leading.alert(), filling.alert(), unit),
        level(leading.danger(), filling.danger(), unit),
        unit,
        filled(leading.okVolts(), filling.okVolts()),
        leading.zeroVolts() == null ? filling.zeroVolts() : leading.zeroVolts(),
        leading.positive() == null ? filling.positive() : leading.positive());
  }

  /** The reason given with the same number holds for it, whichever of the two carries it. */
  private boolean sameScale() {
    return leading.scaleFactor() != null && leading.scaleFactor().equals(filling.scaleFactor());
  }

  private Unit unit() {
    if (leading.levelUnit() != null) {
      return leading.levelUnit();
    }
    return filling.levelUnit() == null ? Unit.MICROMETRE : filling.levelUnit();
  }

  /** Levels in another unit don't fill gaps: the same number would mean something else. */
  private Limits level(Limits first, Limits second, Unit unit) {
    Limits open = filling.levelUnit() == unit ? second : Limits.NONE;
    return filled(leading.levelUnit() == unit ? first : Limits.NONE, open);
  }

  /** One side is never put together with the other side of another setting. */
  private static Limits filled(Limits first, Limits second) {
    return first.equals(Limits.NONE) ? second : first;
  }
}
