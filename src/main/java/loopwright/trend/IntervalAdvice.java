package loopwright.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A suggested time between calibrations with its reasons, by the methods that ILAC-G24 / OIML D 10
 * name (from memory). It is advice: nothing is changed by it.
 *
 * @param months the shortest of what the methods say; empty where none says anything
 * @param reasons one a method, also of those that can't say anything
 */
public record IntervalAdvice(OptionalInt months, List<Reason> reasons) {
  /** Nothing beyond ten years: NIST GMP 11 allows more only with exceptional analysis. */
  private static final int MOST_MONTHS = 120;

  /** No more than twice the present interval in one step; own choice. */
  private static final double MOST_GROWTH = 2;

  /** Fewer as-founds say nothing about a share; own choice. */
  private static final int FEWEST = 5;

  public IntervalAdvice {
    reasons = List.copyOf(reasons);
  }

  /**
   * What one method says.
   *
   * @param months whole, cut down; empty where it can't say anything
   */
  public record Reason(String method, String sentence, OptionalInt months) {}

  /**
   * What is known of the loop.
   *
   * @param presentMonths between calibrations as approved
   * @param withinLimits of the as-founds of this point, oldest first
   * @param trend of the figure that is watched, with the parts fitted now; empty if too few
   * @param tolerance how far that figure may be off nominal, in its unit
   * @param nominal of that figure
   */
  public record Known(
      int presentMonths,
      List<Boolean> withinLimits,
      Optional<Segment> trend,
      double tolerance,
      double nominal) {
    public Known {
      withinLimits = List.copyOf(withinLimits);
    }
  }

  public static IntervalAdvice of(Known known) {
    List<Reason> reasons = List.of(staircase(known), reliability(known), drift(known));
    OptionalInt least =
        reasons.stream()
            .map(Reason::months)
            .filter(OptionalInt::isPresent)
            .mapToInt(OptionalInt::getAsInt)
            .min();
    List<Reason> all = new ArrayList<>(reasons);
    int most = (int) Math.min(MOST_MONTHS, MOST_GROWTH * known.presentMonths());
    if (least.isPresent() && least.getAsInt() > most) {
      all.add(
          new Reason(
              "cut",
              "No more than twice the present interval in one step (own choice), and never more"
                  + " than ten years (NIST GMP 11).",
              OptionalInt.of(most)));
      least = OptionalInt.of(most);
    }
    return new IntervalAdvice(
        least.isPresent() ? OptionalInt.of(Math.max(1, least.getAsInt())) : least, all);
  }

  private static Reason staircase(Known known) {
    String method = "staircase (automatic adjustment)";
    if (known.withinLimits().isEmpty()) {
      return new Reason(method, "No as-found is on record.", OptionalInt.empty());
    }
    boolean within = known.withinLimits().get(known.withinLimits().size() - 1);
    double next = Staircase.USUAL.next(known.presentMonths(), within);
    return new Reason(
        method,
        "The last as-found was %s its limits: %s months %s %s %% make %s."
            .formatted(
                within ? "within" : "outside",
                known.presentMonths(),
                within ? "and" : "less",
                text(100 * (within ? Staircase.USUAL.growth() : Staircase.USUAL.shrinkage())),
                text(next)),
        whole(next));
  }

  private static Reason reliability(Known known) {
    String method = "reliability of as-founds";
    int found = known.withinLimits().size();
    if (found < FEWEST) {
      return new Reason(
          method,
          "%s as-founds are too few; %s are needed (own choice).".formatted(found, FEWEST),
          OptionalInt.empty());
    }
    int within = (int) known.withinLimits().stream().filter(each -> each).count();
    Reliability reliability = new Reliability(within, found);
    String share =
        "%s of %s were within their limits (true share %s to %s %%, 95 %%)"
            .formatted(
                within,
                found,
                text(100 * reliability.lower(0.95)),
                text(100 * reliability.upper(0.95)));
    if (within == found) {
      return new Reason(
          method, share + "; without a failure it sets no limit.", OptionalInt.empty());
    }
    double target = Staircase.USUAL.target();
    double months = reliability.interval(known.presentMonths(), target);
    return new Reason(
        method,
        share
            + "; for %s %% it takes %s months, if failures come at an even rate."
                .formatted(text(100 * target), text(months)),
        whole(months));
  }

  private static Reason drift(Known known) {
    String method = "drift of the average scale factor";
    if (known.trend().isEmpty() || known.trend().get().line().isEmpty()) {
      return new Reason(
          method, "With the parts fitted now there are too few curves.", OptionalInt.empty());
    }
    Segment segment = known.trend().get();
    if (!segment.drifts()) {
      return new Reason(
          method,
          "No drift can be told from chance (its slope is not significant at 5 %).",
          OptionalInt.empty());
    }
    Observation last = segment.observations().get(segment.observations().size() - 1);
    double level = segment.lineAt(last.years(), last);
    double slope = segment.line().orElseThrow().slope();
    double left =
        slope > 0
            ? known.nominal() + known.tolerance() - level
            : level - (known.nominal() - known.tolerance());
    double months =
        DriftInterval.months(
            left, segment.line().orElseThrow().residualStandardDeviation(), Math.abs(slope) / 12);
    return new Reason(
        method,
        "It moves by %s %% of nominal a year and has %s %% left to its limit: %s months."
            .formatted(
                text(100 * slope / known.nominal()),
                text(100 * left / known.nominal()),
                text(months)),
        whole(months));
  }

  private static OptionalInt whole(double months) {
    return OptionalInt.of((int) Math.floor(Math.min(months + 1e-9, 10_000)));
  }

  private static String text(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replace('-', '\u2212');
  }
}
