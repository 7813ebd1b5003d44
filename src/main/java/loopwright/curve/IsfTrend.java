package loopwright.curve;

import java.util.List;
import java.util.Optional;
import loopwright.numerics.StraightLine;

/**
 * How the incremental scale factor runs along the gap: the slope of a least-squares line through
 * ISF against the middles of the judged increments. It is called a trend when a slope so far from
 * zero had a probability below 1 % without one (Student's t), and when it makes at least 1 % of
 * nominal from the first middle to the last, so that rounding in the last digit is no trend.
 * Neighbouring ISF values share a reading with opposite sign, which makes the test cautious.
 *
 * @param direction in words
 * @param slope mV/µm per mm of gap
 * @param slopeStandardError of the same kind
 * @param significance the probability named above
 * @param changePercent along the judged increments, percent of nominal, falling is negative
 * @see "JCGM 100:2008, H.3, for the line; thresholds: own choice"
 */
public record IsfTrend(
    Direction direction,
    double slope,
    double slopeStandardError,
    double significance,
    double changePercent) {

  static final double SIGNIFICANCE = 0.01;
  static final double LEAST_PERCENT = 1;

  /** The word for a trend. */
  public enum Direction {
    FALLS("falls"),
    RISES("rises"),
    NONE("no trend");

    private final String label;

    Direction(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /** Empty with fewer than three increments: they can't tell. */
  static Optional<IsfTrend> along(List<Increment> judged, double nominal) {
    if (judged.size() < StraightLine.FEWEST) {
      return Optional.empty();
    }
    double[] middles = judged.stream().mapToDouble(i -> i.span().middleMicrometres()).toArray();
    double[] isf = judged.stream().mapToDouble(Increment::isf).toArray();
    StraightLine line = StraightLine.fit(middles, isf);
    double change = 100 * line.slope() * (middles[middles.length - 1] - middles[0]) / nominal;
    double significance = line.slopeSignificance();
    return Optional.of(
        new IsfTrend(
            direction(change, significance),
            1000 * line.slope(),
            1000 * line.slopeStandardError(),
            significance,
            change));
  }

  private static Direction direction(double change, double significance) {
    if (significance >= SIGNIFICANCE || Math.abs(change) < LEAST_PERCENT) {
      return Direction.NONE;
    }
    return change < 0 ? Direction.FALLS : Direction.RISES;
  }
}
