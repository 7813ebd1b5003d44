package loopwright.loop;

import java.util.EnumSet;
import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.PlaceView;

/**
 * Of which facts the rules may say that one is missing. The register has a place for all of them;
 * what is neither asked for nor said on any side of a loop is not judged, so that a site which
 * keeps none of it isn't told so loop by loop.
 */
final class FactsHeld {
  private FactsHeld() {}

  static Set<Fact> of(PlaceView place) {
    Set<Fact> facts =
        EnumSet.of(
            Fact.PROBE_TIP,
            Fact.DRIVER_TIP,
            Fact.PROBE_SCALE_FACTOR,
            Fact.DRIVER_SCALE_FACTOR,
            Fact.PLACEMENTS,
            Fact.STATE,
            Fact.CALIBRATION);
    if (!place.channels().isEmpty()) {
      facts.add(Fact.CHANNELS);
    }
    return facts;
  }
}
