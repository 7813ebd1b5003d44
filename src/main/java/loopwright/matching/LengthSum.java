package loopwright.matching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * The nominal lengths of a loop added up.
 *
 * @param terms lengths of lead, cables and adapters in order, as far as they are known
 * @param missing what is not known, each in words: {@code the length of extension cable XC-51733}
 * @param tunedFor what the driver is tuned for, null when not known
 * @param unproved parts whose length rests on evidence that proves nothing
 */
public record LengthSum(
    List<Length> terms, List<String> missing, @Nullable Length tunedFor, List<PartView> unproved) {

  public static LengthSum of(LoopView loop) {
    List<Length> terms = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    if (loop.probe() instanceof Slot.NoneFitted) {
      missing.add("a probe");
    }
    addTerm(loop.probe(), "which probe is fitted", terms, missing);
    for (Slot slot : loop.path()) {
      addTerm(slot, "which extension cable is fitted", terms, missing);
    }
    Optional<KnownLength> system = loop.driver().part().map(PartView::length);
    if (system.isEmpty()) {
      missing.add(
          loop.driver()
              .part()
              .map(driver -> "what " + driver.words() + " is tuned for")
              .orElse("which driver is fitted"));
    }
    return new LengthSum(
        List.copyOf(terms),
        List.copyOf(missing),
        system.map(KnownLength::length).orElse(null),
        loop.parts().stream().filter(LengthSum::isUnproved).toList());
  }

  private static void addTerm(
      Slot slot, String question, List<Length> terms, List<String> missing) {
    Optional<KnownLength> length = slot.part().map(PartView::length);
    if (length.isPresent()) {
      terms.add(length.get().length());
    } else if (slot.part().isPresent()) {
      missing.add("the length of " + slot.part().get().words());
    } else if (!slot.isKnown()) {
      missing.add(question);
    }
  }

  private static boolean isUnproved(PartView part) {
    KnownLength length = part.length();
    return length != null && !length.evidence().proves();
  }

  /** All that is known to be fitted, added up. */
  public Length known() {
    return terms.stream().reduce(Length.ZERO, Length::plus);
  }

  /** Fitted − tuned for; null when a length is not known or there is no probe to begin with. */
  public @Nullable Length balance() {
    return tunedFor == null || !missing.isEmpty() || terms.isEmpty()
        ? null
        : known().minus(tunedFor);
  }
}
