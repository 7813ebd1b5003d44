package loopwright.matching;

import java.util.Collection;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Nearest;

/** Alloy groups as the shop keeps them. Shared by all views of one pass. */
public final class Alloys {
  /** No list was given: nothing is judged by it. */
  public static final Alloys NOT_GIVEN = new Alloys(java.util.List.of(), false);

  private final Map<String, AlloyGroup> byAlloy = new HashMap<>();
  private final Map<String, String> names = new HashMap<>();
  private final boolean given;

  private Alloys(Collection<AlloyGroup> groups, boolean given) {
    groups.forEach(group -> group.alloys().forEach(alloy -> add(group, alloy)));
    this.given = given;
  }

  private void add(AlloyGroup group, String alloy) {
    byAlloy.putIfAbsent(key(alloy), group);
    names.putIfAbsent(key(alloy), alloy);
  }

  public static Alloys of(Collection<AlloyGroup> groups) {
    return new Alloys(groups, true);
  }

  public boolean areGiven() {
    return given;
  }

  /** Whether no alloy is listed. */
  public boolean isEmpty() {
    return byAlloy.isEmpty();
  }

  /** The group that lists the alloy, told without regard to case, blanks and hyphens. */
  public Optional<AlloyGroup> groupOf(String alloy) {
    return Optional.ofNullable(byAlloy.get(key(alloy)));
  }

  /** The listed alloy that is most like the given one; empty when the list is. */
  public Optional<String> nearest(String alloy) {
    return byAlloy.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(names.get(Nearest.word(key(alloy), byAlloy.keySet())));
  }

  public static boolean same(String alloy, String other) {
    return key(alloy).equals(key(other));
  }

  /** In which all spellings of a name are one. */
  public static String key(String alloy) {
    return alloy.replaceAll("[\\s-]+", "").toLowerCase(Locale.ROOT);
  }
}
