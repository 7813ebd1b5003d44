package loopwright.gapround;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.fieldcheck.GapReadings;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import org.jooq.DSLContext;

/**
 * Puts the readings of a round that moved beside those of the other probe of the pair, some
 * hundreds at a time, and keeps the worst.
 */
final class RoundStandings {
  private static final int AT_ONCE = 500;

  private final Plant plant;
  private final GapReadings readings;

  RoundStandings(Plant plant, GapReadings readings) {
    this.plant = plant;
    this.readings = readings;
  }

  /**
   * What a round comes to.
   *
   * @param loops readings that it brought
   * @param worth of them worth a visit
   * @param alone of them without one before that compares
   * @param worst those worth a visit, worst first, as many as were asked for
   */
  record Standing(int loops, int worth, int alone, List<Ranking.Ranked> worst) {}

  Standing of(DSLContext sql, long change, int most) {
    GapReadings.Counted counted = readings.count(sql, change);
    PriorityQueue<Ranking.Ranked> worst = new PriorityQueue<>(Ranking.WORST_FIRST.reversed());
    int worth = 0;
    List<GapReadings.Beside> some = readings.besides(sql, change, Ranking.NOTABLE, 0, AT_ONCE);
    while (!some.isEmpty()) {
      for (Ranking.Ranked each : worthAVisit(sql, change, some)) {
        worth++;
        worst.add(each);
        if (worst.size() > most) {
          worst.remove();
        }
      }
      long last = some.get(some.size() - 1).now().id();
      some = readings.besides(sql, change, Ranking.NOTABLE, last, AT_ONCE);
    }
    return new Standing(
        counted.all(),
        worth,
        counted.all() - counted.compared(),
        worst.stream().sorted(Ranking.WORST_FIRST).toList());
  }

  /** Those of these loops that are worth a visit. */
  List<Ranking.Ranked> worthAVisit(DSLContext sql, long change, Collection<Long> points) {
    return worthAVisit(sql, change, readings.besides(sql, change, points));
  }

  /** A pair that moved together takes some off again: only what is left counts. */
  private List<Ranking.Ranked> worthAVisit(
      DSLContext sql, long change, List<GapReadings.Beside> some) {
    Map<Long, Point> points =
        byNumber(plant.points(sql, some.stream().map(each -> each.now().point()).toList()));
    Map<Long, GapReadings.Beside> all = new LinkedHashMap<>();
    pairs(sql, change, points).forEach(each -> all.put(each.now().id(), each));
    some.forEach(each -> all.put(each.now().id(), each));
    Set<Long> own = some.stream().map(each -> each.now().id()).collect(Collectors.toSet());
    return Ranking.of(all.values().stream().flatMap(each -> compared(each, points)).toList())
        .stream()
        .filter(Ranking.Ranked::isWorthAVisit)
        .filter(ranked -> own.contains(ranked.loop().now().id()))
        .toList();
  }

  private static Map<Long, Point> byNumber(Collection<Point> points) {
    Map<Long, Point> byNumber = new HashMap<>();
    points.forEach(point -> byNumber.put(point.id().number(), point));
    return byNumber;
  }

  /** What the round brought of the other probes, wherever in the file that stood. */
  private List<GapReadings.Beside> pairs(DSLContext sql, long change, Map<Long, Point> points) {
    Set<String> tags =
        points.values().stream()
            .map(point -> point.details().pairTag())
            .filter(tag -> !tag.isEmpty())
            .collect(Collectors.toSet());
    Map<Long, Point> others = byNumber(plant.pointsAsTyped(sql, tags).values());
    points.putAll(others);
    return readings.besides(sql, change, others.keySet());
  }

  private static Stream<Compared> compared(GapReadings.Beside each, Map<Long, Point> points) {
    return Stream.ofNullable(points.get(each.now().point()))
        .map(
            point ->
                new Compared(
                    point.tag(),
                    point.details().pairTag(),
                    each.now(),
                    Optional.ofNullable(each.before())));
  }
}
