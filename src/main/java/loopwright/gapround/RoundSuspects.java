package loopwright.gapround;

import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.fieldcheck.GapReading;
import loopwright.fieldcheck.MachineState;
import loopwright.outage.Suggestion;
import loopwright.outage.SuggestionSource;
import org.jooq.DSLContext;

/**
 * Loops that the newest gap round makes worth a visit. Only these loops' readings are looked at; a
 * reading taken since takes the place of the round's.
 */
public final class RoundSuspects implements SuggestionSource {
  private final GapRounds rounds;
  private final InstantSource clock;

  public RoundSuspects(GapRounds rounds, InstantSource clock) {
    this.rounds = rounds;
    this.clock = clock;
  }

  @Override
  public Map<Long, List<Suggestion.Reason>> of(
      DSLContext sql, Collection<Long> points, LocalDate until) {
    Map<Long, List<Suggestion.Reason>> reasons = new HashMap<>();
    for (RoundStore.Round round : rounds.rounds(sql, Long.MAX_VALUE, 1)) {
      List<Ranking.Ranked> worth = rounds.worthAVisit(sql, round, points);
      Set<Long> newest = newest(sql, worth);
      worth.stream()
          .filter(ranked -> newest.contains(ranked.loop().now().id()))
          .forEach(
              ranked -> reasons.put(ranked.loop().now().point(), List.of(reason(round, ranked))));
    }
    return reasons;
  }

  /** Readings after which no other was taken in the same state, by number. */
  private Set<Long> newest(DSLContext sql, List<Ranking.Ranked> worth) {
    Instant until = clock.instant().plusSeconds(1);
    Map<MachineState, List<Long>> points =
        worth.stream()
            .map(ranked -> ranked.loop().now())
            .collect(
                Collectors.groupingBy(
                    GapReading::state, Collectors.mapping(GapReading::point, Collectors.toList())));
    Set<Long> newest = new HashSet<>();
    points.forEach(
        (state, some) ->
            rounds
                .readings()
                .newest(sql, some, state, until)
                .values()
                .forEach(reading -> newest.add(reading.id())));
    return newest;
  }

  private static Suggestion.Reason reason(RoundStore.Round round, Ranking.Ranked ranked) {
    return new Suggestion.Reason(
        Suggestion.Kind.GAP_ROUND,
        "Gap round " + round.name() + ": " + RoundWords.of(ranked),
        "/gap-rounds/" + round.id());
  }
}
