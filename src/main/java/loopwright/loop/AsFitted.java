package loopwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loopwright.matching.Calibration;
import loopwright.matching.PartView;

/** Holds an as-left against what is fitted. */
final class AsFitted {
  private AsFitted() {}

  static Calibration calibration(
      AsLeftFacts.AsLeft last, List<Placed> chain, Map<Long, PartView> former) {
    return new Calibration(
        last.measuredOn(),
        last.outcome(),
        changes(last, chain, former),
        last.targetAlloy(),
        last.averageScaleFactor());
  }

  private static List<String> changes(
      AsLeftFacts.AsLeft last, List<Placed> chain, Map<Long, PartView> former) {
    Map<Slot, Long> then = Combinations.components(last.fingerprint());
    List<String> changed = new ArrayList<>();
    for (Placed placed : chain) {
      Long before = then.remove(placed.slot());
      Long now =
          placed.content().component().isPresent()
              ? (Long) placed.content().component().getAsLong()
              : null;
      boolean refitted =
          last.takenHere() && now != null && placed.span().from().isAfter(last.measuredAt());
      if (now != null && (!now.equals(before) || refitted)) {
        changed.add(words(now, former, placed.slot()));
      }
      if (now == null && before != null) {
        changed.add("the present " + placed.slot().word());
      }
    }
    then.forEach((slot, number) -> changed.add("an empty " + slot.word()));
    return changed;
  }

  private static String words(long number, Map<Long, PartView> views, Slot slot) {
    PartView view = views.get(number);
    return view == null ? "the present " + slot.word() : view.words();
  }
}
