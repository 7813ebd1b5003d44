package loopwright.matching;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Target alloys to which a probe answers alike.
 *
 * @param ferrous whether they are alloys of iron; null if nobody said
 * @param relativeSlope slope on this group over the slope on low-alloy steel, for a driver made for
 *     low-alloy steel; null if not known
 * @param source on what the slope rests
 * @param alloys every name that belongs to it
 */
public record AlloyGroup(
    String name,
    @Nullable Boolean ferrous,
    @Nullable Double relativeSlope,
    String source,
    List<String> alloys) {

  /** Refuses a slope that isn't above zero. */
  public AlloyGroup {
    alloys = List.copyOf(alloys);
    if (relativeSlope != null && !(relativeSlope > 0)) {
      throw new IllegalArgumentException("A relative slope is above zero.");
    }
  }
}
