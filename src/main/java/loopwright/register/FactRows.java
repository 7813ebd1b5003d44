package loopwright.register;

import java.math.BigDecimal;
import java.math.RoundingMode;
import loopwright.matching.Evidence;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** Values of this feature as columns hold them. */
final class FactRows {
  /** Decimals of a length in metres on disk; what was typed is kept beside and is exact. */
  private static final int LENGTH_DECIMALS = 5;

  private FactRows() {}

  static @Nullable NominalLength length(
      @Nullable BigDecimal metres,
      @Nullable String typed,
      @Nullable String unit,
      @Nullable String evidence) {
    Reported reported = reported(metres, typed, unit);
    return reported == null || evidence == null
        ? null
        : new NominalLength(reported, Evidence.named(evidence).orElseThrow());
  }

  static @Nullable Reported reported(
      @Nullable BigDecimal metres, @Nullable String typed, @Nullable String unit) {
    if (metres == null) {
      return null;
    }
    if (typed == null || unit == null) {
      return new Reported(Numbers.plain(metres), Unit.METRE, metres);
    }
    return new Reported(typed, Unit.named(unit).orElseThrow(), Numbers.read(typed).orElseThrow());
  }

  static @Nullable ScaleFactor scale(@Nullable BigDecimal declared, @Nullable String unit) {
    return declared == null || unit == null
        ? null
        : new ScaleFactor(new BigDecimal(Numbers.plain(declared)), Unit.named(unit).orElseThrow());
  }

  static @Nullable FamilyId family(@Nullable Long number) {
    return number == null ? null : new FamilyId(number);
  }

  static @Nullable Long number(@Nullable FamilyId family) {
    return family == null ? null : family.number();
  }

  static @Nullable BigDecimal metres(@Nullable Reported length) {
    return length == null ? null : metres(Length.of(length));
  }

  /** As stored, for comparing with stored lengths. */
  static BigDecimal metres(Length length) {
    return length.metres().setScale(LENGTH_DECIMALS, RoundingMode.HALF_UP);
  }

  static @Nullable String typed(@Nullable Reported value) {
    return value == null ? null : value.typed();
  }

  static @Nullable String unit(@Nullable Reported value) {
    return value == null ? null : value.unit().symbol();
  }

  static @Nullable Reported reported(@Nullable NominalLength length) {
    return length == null ? null : length.typed();
  }

  static @Nullable String evidence(@Nullable NominalLength length) {
    return length == null ? null : length.evidence().word();
  }

  static @Nullable BigDecimal declared(@Nullable ScaleFactor scaleFactor) {
    return scaleFactor == null ? null : scaleFactor.declared();
  }

  static @Nullable String unit(@Nullable ScaleFactor scaleFactor) {
    return scaleFactor == null ? null : scaleFactor.unit().symbol();
  }

  static @Nullable String absent(String text) {
    return text.isEmpty() ? null : text;
  }

  static String present(@Nullable String text) {
    return text == null ? "" : text;
  }
}
