package loopwright.matching;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import loopwright.problem.Nearest;

/**
 * The families that loops are judged against. Codes are compared without regard to case. Shared by
 * all views of one pass.
 */
public final class Families {
  /** No list was given: whatever needs one is not judged. */
  public static final Families NOT_GIVEN =
      new Families(List.of(), List.of(), false, LearntLaws.NONE);

  private final Map<String, FamilyView> byCode = new TreeMap<>();
  private final List<InterchangeablePair> pairs;
  private final boolean given;
  private final LearntLaws laws;

  private Families(
      Collection<FamilyView> families,
      Collection<InterchangeablePair> pairs,
      boolean given,
      LearntLaws laws) {
    families.forEach(family -> byCode.put(key(family.code()), family));
    this.pairs = List.copyOf(pairs);
    this.given = given;
    this.laws = laws;
  }

  public static Families of(
      Collection<FamilyView> families, Collection<InterchangeablePair> pairs) {
    return new Families(families, pairs, true, LearntLaws.NONE);
  }

  /** The same with what was learnt of their length laws. */
  public Families knowing(LearntLaws learnt) {
    return new Families(byCode.values(), pairs, given, learnt);
  }

  public LearntLaws laws() {
    return laws;
  }

  public boolean areGiven() {
    return given;
  }

  public Optional<FamilyView> named(String code) {
    return Optional.ofNullable(byCode.get(key(code)));
  }

  /** The listed code that is most like the given one; empty when the list is. */
  public Optional<String> nearest(String code) {
    String nearest = Nearest.word(key(code), byCode.keySet());
    return Optional.ofNullable(byCode.get(nearest)).map(FamilyView::code);
  }

  public static boolean same(String code, String other) {
    return key(code).equals(key(other));
  }

  public Optional<InterchangeablePair> pair(String code, String other) {
    return pairs.stream().filter(pair -> pair.joins(code, other)).findFirst();
  }

  private static String key(String code) {
    return code.strip().toLowerCase(Locale.ROOT);
  }
}
