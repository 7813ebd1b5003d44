package loopwright.alloy;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loopwright.matching.AlloyGroup;
import loopwright.matching.Alloys;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/**
 * What is said of a group.
 *
 * @param ferrous whether they are alloys of iron; null if nobody said
 * @param relativeSlope slope on this group over the slope on low-alloy steel, for a driver made for
 *     low-alloy steel; null if not known
 * @param source on what the slope rests; may be empty
 * @param alloys every name that belongs to it
 */
public record GroupDetails(
    String name,
    @Nullable Boolean ferrous,
    @Nullable BigDecimal relativeSlope,
    String source,
    List<String> alloys) {

  /** Refuses a group of nothing, an alloy named twice and a slope that can't be. */
  public GroupDetails {
    name = named("the group's name", name);
    source = Text.kept("the source", source, 200);
    relativeSlope = relativeSlope == null ? null : checked(relativeSlope);
    alloys = alloys.stream().filter(a -> !a.isBlank()).map(a -> named("the alloy", a)).toList();
    if (alloys.isEmpty()) {
      throw new Refused(AlloyProblem.NO_ALLOY);
    }
    refuseTwice(alloys);
  }

  private static String named(String what, String text) {
    String kept = Text.needed(what, text, 60);
    if (kept.codePoints().noneMatch(Character::isLetterOrDigit)) {
      throw new Refused(AlloyProblem.NO_NAME, kept);
    }
    return kept;
  }

  static BigDecimal checked(BigDecimal slope) {
    BigDecimal plain = new BigDecimal(Numbers.plain(slope));
    if (plain.signum() <= 0 || plain.compareTo(BigDecimal.TEN) > 0 || plain.scale() > 4) {
      throw new Refused(AlloyProblem.BAD_SLOPE, Numbers.plain(plain));
    }
    return plain;
  }

  private static void refuseTwice(List<String> alloys) {
    Set<String> seen = new HashSet<>();
    for (String alloy : alloys) {
      if (!seen.add(Alloys.key(alloy))) {
        throw new Refused(AlloyProblem.ALLOY_TWICE, alloy);
      }
    }
  }

  AlloyGroup asJudged() {
    Double slope = relativeSlope == null ? null : Double.valueOf(relativeSlope.doubleValue());
    return new AlloyGroup(name, ferrous, slope, source, alloys);
  }
}
