package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import loopwright.matching.Fact;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import loopwright.units.Numbers;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * The probe's tip and nominal scale factor are those that the driver is made for. What a part does
 * not say itself is its family's.
 */
record TipAndScaleFactor() implements Rule {
  /** 200 mV/mil and 7.87 mV/µm, one nominal in two spellings, lie 0.05 % apart. */
  private static final double SPELLING = 0.001;

  @Override
  public String name() {
    return "tip and scale factor";
  }

  @Override
  public String basis() {
    return "A driver is made for one tip size and one nominal scale factor (common practice, no"
        + " source). 200 mV/mil is 200/25.4 mV/µm exactly, 0.05 % more than 7.87 mV/µm.";
  }

  @Override
  public Finding judge(LoopView loop) {
    Remarks remarks = new Remarks();
    compare(
        side(loop, loop.probe(), Fact.PROBE_TIP, TipAndScaleFactor::tip),
        side(loop, loop.driver(), Fact.DRIVER_TIP, TipAndScaleFactor::tip),
        "tip size",
        TipAndScaleFactor::tips,
        remarks);
    compare(
        side(loop, loop.probe(), Fact.PROBE_SCALE_FACTOR, TipAndScaleFactor::scaleFactor),
        side(loop, loop.driver(), Fact.DRIVER_SCALE_FACTOR, TipAndScaleFactor::scaleFactor),
        "scale factor",
        TipAndScaleFactor::scaleFactors,
        remarks);
    return remarks.of(this, "Tip size and scale factor are not recorded for probe and driver.");
  }

  /** What one end of the loop says, and whether the source would have a place for it. */
  private record Side<T>(Optional<T> value, boolean hasPlace) {}

  private static <T> Side<T> side(
      LoopView loop, Slot slot, Fact fact, BiFunction<LoopView, PartView, Optional<T>> value) {
    return new Side<>(
        slot.part().flatMap(part -> value.apply(loop, part)), loop.facts().contains(fact));
  }

  private static Optional<BigDecimal> tip(LoopView loop, PartView part) {
    return own(loop, part, part.tipMillimetres(), FamilyView::tipMillimetres);
  }

  private static Optional<ScaleFactor> scaleFactor(LoopView loop, PartView part) {
    return own(loop, part, part.scaleFactor(), FamilyView::scaleFactor);
  }

  private static <T> Optional<T> own(
      LoopView loop, PartView part, @Nullable T own, Function<FamilyView, @Nullable T> familys) {
    return Optional.ofNullable(own).or(() -> loop.familyOf(part).map(familys));
  }

  private interface Comparison<T> {
    void of(T probe, T driver, Remarks remarks);
  }

  private static <T> void compare(
      Side<T> probe, Side<T> driver, String what, Comparison<T> comparison, Remarks remarks) {
    if (probe.value.isPresent() && driver.value.isPresent()) {
      comparison.of(probe.value.get(), driver.value.get(), remarks);
    } else if ((probe.value.isPresent() || probe.hasPlace)
        && (driver.value.isPresent() || driver.hasPlace)) {
      String whose =
          probe.value.isPresent()
              ? "driver"
              : driver.value.isPresent() ? "probe" : "probe and driver";
      remarks.add(Verdict.UNKNOWN, "The " + what + " of the " + whose + " is not recorded.");
    }
  }

  private static void tips(BigDecimal probe, BigDecimal driver, Remarks remarks) {
    if (probe.compareTo(driver) == 0) {
      remarks.add(Verdict.MATCHES, "Tip " + Numbers.plain(probe) + " mm at both ends.");
    } else {
      remarks.add(
          Verdict.REFUSED,
          "The probe has a %s mm tip, the driver is made for %s mm."
              .formatted(Numbers.plain(probe), Numbers.plain(driver)),
          "Fit a probe and a driver of one tip size.");
    }
  }

  private static void scaleFactors(ScaleFactor probe, ScaleFactor driver, Remarks remarks) {
    double apart = Math.abs(probe.millivoltsPerMicrometre() / driver.millivoltsPerMicrometre() - 1);
    if (sameNumber(probe, driver)) {
      remarks.add(Verdict.MATCHES, "Scale factor " + driver + " at both ends.");
    } else if (apart <= SPELLING) {
      remarks.add(
          Verdict.ATTENTION,
          "%s and %s are not the same number, though probably one nominal."
              .formatted(probe, driver),
          "Declare one of them.");
    } else {
      remarks.add(
          Verdict.REFUSED,
          "The probe is for %s, the driver for %s.".formatted(probe, driver),
          "Fit a probe and a driver of one scale factor.");
    }
  }

  private static boolean sameNumber(ScaleFactor one, ScaleFactor other) {
    return one.unit() == other.unit()
        ? one.declared().compareTo(other.declared()) == 0
        : one.millivoltsPerMicrometre() == other.millivoltsPerMicrometre();
  }
}
