package loopwright.register;

import java.math.BigDecimal;
import java.util.Objects;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of a part over a range of moments. Null means nobody knows.
 *
 * @param length nominal (electrical) length; for a driver the system length it is tuned for
 * @param physicalLength measured with a tape: a plausibility check only
 * @param tipMillimetres tip diameter; for a driver the tip it is made for
 * @param conditionReason why it may not be used; empty while it may
 * @param shelf where it lies when it is not fitted
 * @param settingsHash SHA-256 of the configuration file of a driver whose system length is a
 *     setting
 */
public record ComponentFacts(
    @Nullable FamilyId family,
    @Nullable NominalLength length,
    @Nullable Reported physicalLength,
    @Nullable BigDecimal tipMillimetres,
    @Nullable ScaleFactor scaleFactor,
    Condition condition,
    String conditionReason,
    Shelf shelf,
    @Nullable String settingsHash) {

  static final int MOST_PHYSICAL_METRES = 100;
  private static final BigDecimal MOST_TIP = BigDecimal.valueOf(100);

  /** Nothing known, usable. */
  public static final ComponentFacts NOTHING_KNOWN =
      new ComponentFacts(null, null, null, null, null, Condition.USABLE, "", Shelf.NOT_SAID, null);

  /** Numbers lose trailing zeros; refuses what can't be, and a bad condition without reason. */
  public ComponentFacts {
    tipMillimetres = tipMillimetres == null ? null : plain(tipMillimetres);
    scaleFactor =
        scaleFactor == null
            ? null
            : new ScaleFactor(plain(scaleFactor.declared()), scaleFactor.unit());
    conditionReason = Text.kept("the reason", conditionReason, 400);
    if (physicalLength != null) {
      NominalLength.refuseImpossible(physicalLength, MOST_PHYSICAL_METRES);
    }
    refuseImpossibleTip(tipMillimetres);
    refuseImpossibleScale(scaleFactor);
    if (condition != Condition.USABLE && conditionReason.isEmpty()) {
      throw new Refused(RegisterProblem.REASON_NEEDED);
    }
  }

  static void refuseImpossibleTip(@Nullable BigDecimal millimetres) {
    if (millimetres != null
        && (millimetres.signum() <= 0
            || millimetres.compareTo(MOST_TIP) > 0
            || millimetres.stripTrailingZeros().scale() > 2)) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE,
          "A tip diameter",
          millimetres.toPlainString() + " mm",
          "more than 0 and at most 100 mm, with at most 2 decimals");
    }
  }

  static void refuseImpossibleScale(@Nullable ScaleFactor scaleFactor) {
    if (scaleFactor != null
        && (scaleFactor.declared().stripTrailingZeros().scale() > 6
            || scaleFactor.declared().compareTo(BigDecimal.valueOf(100_000)) >= 0)) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE,
          "A scale factor",
          scaleFactor,
          "less than 100000 and at most 6 decimals");
    }
  }

  private static BigDecimal plain(BigDecimal number) {
    return new BigDecimal(Numbers.plain(number));
  }

  public ComponentFacts withFamily(@Nullable FamilyId other) {
    return new ComponentFacts(
        other,
        length,
        physicalLength,
        tipMillimetres,
        scaleFactor,
        condition,
        conditionReason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withLength(@Nullable NominalLength other) {
    return new ComponentFacts(
        family,
        other,
        physicalLength,
        tipMillimetres,
        scaleFactor,
        condition,
        conditionReason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withPhysicalLength(@Nullable Reported other) {
    return new ComponentFacts(
        family,
        length,
        other,
        tipMillimetres,
        scaleFactor,
        condition,
        conditionReason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withTip(@Nullable BigDecimal millimetres) {
    return new ComponentFacts(
        family,
        length,
        physicalLength,
        millimetres,
        scaleFactor,
        condition,
        conditionReason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withScaleFactor(@Nullable ScaleFactor other) {
    return new ComponentFacts(
        family,
        length,
        physicalLength,
        tipMillimetres,
        other,
        condition,
        conditionReason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withCondition(Condition other, String reason) {
    return new ComponentFacts(
        family,
        length,
        physicalLength,
        tipMillimetres,
        scaleFactor,
        other,
        reason,
        shelf,
        settingsHash);
  }

  public ComponentFacts withShelf(Shelf other) {
    return new ComponentFacts(
        family,
        length,
        physicalLength,
        tipMillimetres,
        scaleFactor,
        condition,
        conditionReason,
        other,
        settingsHash);
  }

  public ComponentFacts withSettingsHash(@Nullable String other) {
    return new ComponentFacts(
        family,
        length,
        physicalLength,
        tipMillimetres,
        scaleFactor,
        condition,
        conditionReason,
        shelf,
        other);
  }

  /**
   * These facts with each one that still is as {@code before} had it made what {@code after} has.
   */
  ComponentFacts carrying(ComponentFacts before, ComponentFacts after) {
    boolean sameCondition = sameCondition(before);
    return new ComponentFacts(
        carried(family, before.family, after.family),
        carried(length, before.length, after.length),
        carried(physicalLength, before.physicalLength, after.physicalLength),
        carried(tipMillimetres, before.tipMillimetres, after.tipMillimetres),
        carried(scaleFactor, before.scaleFactor, after.scaleFactor),
        sameCondition ? after.condition : condition,
        sameCondition ? after.conditionReason : conditionReason,
        Objects.requireNonNull(carried(shelf, before.shelf, after.shelf)),
        carried(settingsHash, before.settingsHash, after.settingsHash));
  }

  boolean sameCondition(ComponentFacts other) {
    return condition == other.condition && conditionReason.equals(other.conditionReason);
  }

  private static <T> @Nullable T carried(@Nullable T here, @Nullable T before, @Nullable T after) {
    return Objects.equals(here, before) ? after : here;
  }
}
