package loopwright.trend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A figure over the years, cut where a part was exchanged: what other parts gave is another line.
 *
 * @param segments in the order of their first observations
 */
public record Trend(List<Segment> segments) {

  public Trend {
    segments = List.copyOf(segments);
  }

  /**
   * @param least so far off its line a value must be to be called an outlier, in its unit
   */
  public static Trend of(List<Observation> observations, double least) {
    List<Observation> rising = new ArrayList<>(observations);
    rising.sort(Comparator.comparing(Observation::at));
    Map<String, List<Observation>> byName = new LinkedHashMap<>();
    rising.forEach(
        one -> byName.computeIfAbsent(one.segment(), name -> new ArrayList<>()).add(one));
    return new Trend(
        byName.entrySet().stream()
            .map(entry -> Segment.of(entry.getKey(), entry.getValue(), least))
            .toList());
  }

  /** The one that the youngest observation belongs to. */
  public Optional<Segment> latest() {
    return segments.stream()
        .max(
            Comparator.comparing(
                segment -> segment.observations().get(segment.observations().size() - 1).at()));
  }

  /** The one of those parts. */
  public Optional<Segment> of(String name) {
    return segments.stream().filter(segment -> segment.name().equals(name)).findFirst();
  }

  public boolean isEmpty() {
    return segments.isEmpty();
  }
}
