package loopwright.cause;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Expected information of a measurement: how much the uncertainty about the answer falls on
 * average, I = H(outcome) − Σ p(answer) H(outcome | answer), in bits.
 *
 * @see "Lindley, Ann. Math. Statist. 27 (1956) 986–1005 (from memory)"
 */
final class Information {
  private Information() {}

  /** What a technician wants to know: which cause and, where it is one, which length. */
  private record Answer(Cause cause, Optional<BigDecimal> length) {}

  static double expected(List<Weighed> weighed, Function<Weighed, double[]> outcomes) {
    Map<Answer, double[]> joint = new HashMap<>();
    for (Weighed each : weighed) {
      Answer answer = new Answer(each.cause(), each.variant().fittedLength());
      double[] probabilities = outcomes.apply(each);
      double[] sums = joint.computeIfAbsent(answer, a -> new double[probabilities.length]);
      for (int i = 0; i < sums.length; i++) {
        sums[i] += each.probability() * probabilities[i];
      }
    }
    return between(joint);
  }

  private static double between(Map<Answer, double[]> joint) {
    double[] all = new double[joint.values().iterator().next().length];
    joint.values().forEach(row -> add(all, row));
    double information = 0;
    for (double[] row : joint.values()) {
      double answer = Arrays.stream(row).sum();
      for (int i = 0; i < row.length; i++) {
        if (row[i] > 0) {
          information += row[i] * Math.log(row[i] / (answer * all[i]));
        }
      }
    }
    return Math.max(0, information / Math.log(2));
  }

  private static void add(double[] sums, double[] row) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += row[i];
    }
  }
}
