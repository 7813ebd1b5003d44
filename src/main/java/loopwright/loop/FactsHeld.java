package loopwright.loop;

import java.util.EnumSet;
import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.PlaceView;

/**
 * Of which facts the rules may say that one is missing. The register has a place for all of them;
 * what is neither asked for nor said on any side of a loop is not judged, so that a site which
 * keeps none of it isn't told so loop by loop.
 */
final class FactsHeld {
  private FactsHeld() {}

  /**
   * @param view complete but for the facts held
   */
  static Set<Fact> of(LoopView view) {
    Set<Fact> facts =
        EnumSet.of(
            Fact.PROBE_TIP,
            Fact.DRIVER_TIP,
            Fact.PROBE_SCALE_FACTOR,
            Fact.DRIVER_SCALE_FACTOR,
            Fact.PLACEMENTS,
            Fact.STATE,
            Fact.CALIBRATION);
    add(facts, Fact.CHANNELS, !view.place().channels().isEmpty());
    add(facts, Fact.AREA, isAreaSaid(view));
    add(facts, Fact.SHAFT_ALLOY, isAlloySaid(view));
    add(facts, Fact.TEMPERATURES, isTemperatureSaid(view));
    return facts;
  }

  private static void add(Set<Fact> facts, Fact fact, boolean held) {
    if (held) {
      facts.add(fact);
    }
  }

  /** The point says its area, a part its approval, or a barrier is fitted. */
  private static boolean isAreaSaid(LoopView view) {
    return !view.place().areaClass().isBlank()
        || view.barrier().part().isPresent()
        || view.parts().stream().map(PartView::sheet).anyMatch(sheet -> sheet.approval() != null);
  }

  /** The point says what its shaft is of, or groups are kept to judge a declared alloy by. */
  private static boolean isAlloySaid(LoopView view) {
    return !view.place().shaftAlloy().isBlank()
        || !view.alloys().isEmpty()
            && view.family().filter(family -> !family.targetAlloy().isBlank()).isPresent();
  }

  private static boolean isTemperatureSaid(LoopView view) {
    PlaceView place = view.place();
    return place.tipCelsius() != null
        || place.routeCelsius() != null
        || place.boxCelsius() != null
        || view.parts().stream().anyMatch(part -> !part.sheet().celsius().isNotSaid());
  }
}
