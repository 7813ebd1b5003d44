package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;

/**
 * The loops that are left by somebody's leave, taken down before a change of what is fitted:
 * whatever is no longer exactly these parts afterwards has lost it.
 *
 * @param fingerprints of the parts, by point
 * @param at the moment at which they were so
 */
record Leaves(Map<Long, String> fingerprints, Instant at) {
  private static final int AT_ONCE = 500;

  /** What stands by leave at each of these moments. */
  static List<Leaves> at(
      DSLContext sql,
      PlacementStore placements,
      Allowances allowances,
      Collection<Long> points,
      Instant... moments) {
    return Stream.of(moments)
        .distinct()
        .map(moment -> of(sql, placements, allowances, points, moment))
        .toList();
  }

  static Leaves of(
      DSLContext sql,
      PlacementStore placements,
      Allowances allowances,
      Collection<Long> points,
      Instant at) {
    Map<Long, String> bound = new TreeMap<>();
    for (List<Long> some : Chunks.of(points, AT_ONCE)) {
      Map<Long, String> fitted = fitted(sql, placements, some, at);
      List<AsLeftFacts.Fitted> asked = new ArrayList<>();
      fitted.forEach((point, parts) -> asked.add(new AsLeftFacts.Fitted(point, parts)));
      allowances
          .standing(sql, asked, Viewpoint.of(at))
          .keySet()
          .forEach(point -> bound.put(point, fitted.getOrDefault(point, "")));
    }
    return new Leaves(bound, at);
  }

  /** Ends what was bound to parts that are no longer together. */
  void endWhereExchanged(Tx tx, PlacementStore placements, Allowances allowances) {
    for (List<Long> some : Chunks.of(fingerprints.keySet(), AT_ONCE)) {
      Map<Long, String> now = fitted(tx.sql(), placements, some, at);
      some.stream()
          .filter(point -> !now.getOrDefault(point, "").equals(fingerprints.get(point)))
          .forEach(point -> allowances.exchanged(tx, point, fingerprints.getOrDefault(point, "")));
    }
  }

  private static Map<Long, String> fitted(
      DSLContext sql, PlacementStore placements, List<Long> points, Instant at) {
    return placements.at(sql, points, at).stream()
        .collect(Collectors.groupingBy(Placed::point))
        .entrySet()
        .stream()
        .collect(
            Collectors.toMap(
                Map.Entry::getKey, entry -> Combinations.fingerprint(entry.getValue()).orElse("")));
  }
}
