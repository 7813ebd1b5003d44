package loopwright.curve;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.units.Unit;

/**
 * A static curve: the readings of one or two runs, kept by run and rising gap whatever the order
 * they came in. {@link CurveCheck} says in words what can't become a curve.
 */
public record Curve(List<CurveReading> readings) {
  /** Fewest readings of a run that show more than a slope. */
  public static final int FEWEST = 3;

  /** Sorts, then refuses a run of fewer than three readings and a gap that stands twice in one. */
  public Curve {
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("A curve has readings.");
    }
    readings =
        readings.stream()
            .sorted(
                Comparator.comparing(CurveReading::run).thenComparing(CurveReading::gapMicrometres))
            .toList();
    for (Run run : Run.values()) {
      refuseUnfit(readings.stream().filter(reading -> reading.run() == run).toList());
    }
  }

  private static void refuseUnfit(List<CurveReading> run) {
    if (!run.isEmpty() && run.size() < FEWEST) {
      throw new IllegalArgumentException("A run has at least three readings.");
    }
    boolean repeated =
        IntStream.range(1, run.size())
            .anyMatch(i -> run.get(i).gapMicrometres() == run.get(i - 1).gapMicrometres());
    if (repeated) {
      throw new IllegalArgumentException("A gap stands once in a run.");
    }
  }

  /** The runs there are, up first. */
  public List<Run> runs() {
    return readings.stream().map(CurveReading::run).distinct().toList();
  }

  /** By rising gap. */
  public List<CurveReading> of(Run run) {
    return readings.stream().filter(reading -> reading.run() == run).toList();
  }

  /** The unit the gaps were typed in; of a mixture, that of the first reading. */
  public Unit gapUnit() {
    return readings.get(0).gap().unit();
  }
}
