package loopwright.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.numerics.MonotoneCurve;
import loopwright.problem.Refused;

/**
 * A curve that was read from a file or from the records, as readings by rising gap; of an up and a
 * down run the mean.
 *
 * @param name of it, as the person knows it
 */
public record GivenCurve(String name, double[] gaps, double[] volts) {

  public static GivenCurve of(String name, Curve curve) {
    Map<Double, Double> means =
        curve.readings().stream()
            .collect(
                Collectors.groupingBy(
                    CurveReading::gapMicrometres,
                    TreeMap::new,
                    Collectors.averagingDouble(CurveReading::volts)));
    List<Double> gaps = new ArrayList<>(means.keySet());
    return new GivenCurve(
        name,
        gaps.stream().mapToDouble(Double::doubleValue).toArray(),
        gaps.stream().mapToDouble(means::get).toArray());
  }

  /** As the loop is now; refuses outputs that aren't negative. */
  public PresentCurve present() {
    for (int i = 0; i < volts.length; i++) {
      if (!(volts[i] < 0)) {
        throw new Refused(CauseProblem.POSITIVE_CURVE, name, Told.gap(gaps[i]));
      }
    }
    return new PresentCurve(gaps, volts);
  }

  /** As a baseline; refuses one that doesn't fall from reading to reading. */
  MonotoneCurve falling() {
    for (int i = 1; i < gaps.length; i++) {
      if (!(volts[i] < volts[i - 1])) {
        throw new Refused(CauseProblem.NOT_FALLING, name, Told.gap(gaps[i]));
      }
    }
    return MonotoneCurve.through(gaps, volts);
  }

  double middle() {
    return (gaps[0] + gaps[gaps.length - 1]) / 2;
  }

  boolean reaches(double gap) {
    return gap >= gaps[0] && gap <= gaps[gaps.length - 1];
  }

  /** Where between the readings the output is that. */
  double gapAt(double output) {
    MonotoneCurve curve = falling();
    double low = gaps[0];
    double high = gaps[gaps.length - 1];
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (curve.at(middle) > output) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  boolean gives(double output) {
    return output <= volts[0] && output >= volts[volts.length - 1];
  }
}
