package loopwright.drift;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Stage;
import org.jspecify.annotations.Nullable;

/**
 * Which calibrations tell of drift, and how. Drift is what happens between an as left and the next
 * as found of the same parts: an as left begins another level, because whatever was adjusted before
 * it is no drift. Where nothing was touched the job is one observation, not two.
 */
final class DriftSeries {
  /** Found and left of one job lie within this, as for what is open; own choice. */
  private static final Duration ONE_JOB = Duration.ofDays(60);

  /** As founds within this are of one job; own choice. */
  private static final Duration ONE_SHIFT = Duration.ofHours(12);

  private final List<Entry> entries = new ArrayList<>();
  private final Map<String, Entry> last = new HashMap<>();

  private DriftSeries() {}

  /**
   * A calibration and what it counts for.
   *
   * @param level how often its parts had been adjusted before
   * @param why it isn't counted; empty where it is
   */
  record Entry(Calibrated calibrated, int level, String why) {
    boolean counts() {
      return why.isEmpty() && calibrated.hasCurve();
    }
  }

  /**
   * @param oldestFirst of one loop or of one part
   * @param superseded ids of those in whose place another record stands
   */
  static List<Entry> of(List<Calibrated> oldestFirst, Set<Long> superseded) {
    DriftSeries series = new DriftSeries();
    for (int i = 0; i < oldestFirst.size(); i++) {
      Calibrated next = i + 1 < oldestFirst.size() ? oldestFirst.get(i + 1) : null;
      Calibrated c = oldestFirst.get(i);
      if (superseded.contains(c.id())) {
        series.entries.add(new Entry(c, 0, "superseded, not counted"));
      } else if (next != null && !superseded.contains(next.id()) && isSameReading(c, next)) {
        series.entries.add(new Entry(c, 0, "entered again as " + next.number() + ", not counted"));
      } else {
        series.add(c);
      }
    }
    return List.copyOf(series.entries);
  }

  /** Of two records of one loop, stage and moment the one entered later counts. */
  private static boolean isSameReading(Calibrated c, Calibrated next) {
    return c.stage() == next.stage()
        && c.measuredAt().equals(next.measuredAt())
        && c.fingerprint().equals(next.fingerprint())
        && c.point() != null
        && c.point().equals(next.point());
  }

  private void add(Calibrated c) {
    Entry before = last.get(c.fingerprint());
    Entry entry = entry(c, before);
    entries.add(entry);
    if (entry.counts()) {
      last.put(c.fingerprint(), entry);
    }
  }

  private static Entry entry(Calibrated c, @Nullable Entry before) {
    if (before == null) {
      return new Entry(c, 0, "");
    }
    Calibrated found = before.calibrated();
    if (c.stage().isAsLeft()
        && found.stage() == Stage.AS_FOUND
        && isOneJob(found, c)
        && c.hasCurve()
        && c.numbers().equals(found.numbers())) {
      return new Entry(c, before.level(), "as " + found.number() + " reads, counted once");
    }
    return new Entry(c, before.level() + (c.stage() == Stage.AS_LEFT ? 1 : 0), "");
  }

  private static boolean isOneJob(Calibrated found, Calibrated left) {
    return Duration.between(found.measuredAt(), left.measuredAt()).compareTo(ONE_JOB) <= 0;
  }

  /** Those that a line is drawn through. */
  static List<Entry> counted(List<Entry> entries) {
    return entries.stream().filter(Entry::counts).toList();
  }

  /**
   * Of each time the loop was found: whether it was within its limits. A loop of which no curve
   * came was not; of several as founds of one shift the worst counts.
   */
  static List<Boolean> foundWithin(List<Entry> entries) {
    List<Boolean> within = new ArrayList<>();
    Calibrated before = null;
    for (Entry entry : entries) {
      Calibrated c = entry.calibrated();
      if (!entry.why().isEmpty() || c.stage() == Stage.AS_LEFT) {
        continue;
      }
      boolean conforms = c.outcome().equals("conforms");
      if (before != null
          && Duration.between(before.measuredAt(), c.measuredAt()).compareTo(ONE_SHIFT) <= 0) {
        int place = within.size() - 1;
        within.set(place, within.get(place) && conforms);
      } else {
        within.add(conforms);
      }
      before = c;
    }
    return within;
  }
}
