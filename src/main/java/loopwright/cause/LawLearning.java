package loopwright.cause;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What proved lengths make of a length law: Bayes' rule on a fixed grid of exponents and changes
 * along the gap, the law before as prior. One loop never narrows it below a floor, for loops of one
 * family differ; own choice.
 */
public final class LawLearning {
  /** Least standard uncertainty of the exponent that evidence can leave. */
  private static final double FLOOR_N = 0.06;

  /** Of the change along the gap, per mm. */
  private static final double FLOOR_C = 0.04;

  private static final int EXPONENTS = 61;
  private static final int SLOPES = 31;

  private final LengthLaw prior;
  private final Grid exponents;
  private final Grid slopes;

  /** Of each case the logarithm of its likelihood, at every pair of exponent and slope. */
  private final List<double[]> logs;

  private LawLearning(LengthLaw prior, List<ProvedLength> evidence) {
    this.prior = prior;
    this.exponents = prior.exponents(EXPONENTS);
    this.slopes = prior.slopes(SLOPES);
    this.logs = evidence.stream().map(this::logs).toList();
  }

  /** Weighs each case once, so that what each of them does can be told. */
  public static LawLearning of(LengthLaw prior, List<ProvedLength> evidence) {
    return new LawLearning(prior, evidence);
  }

  /** The law after the evidence; the prior where there is none. */
  public static LengthLaw learnt(LengthLaw prior, List<ProvedLength> evidence) {
    return of(prior, evidence).learnt();
  }

  /** The law after all of the evidence. */
  public LengthLaw learnt() {
    return law(logs);
  }

  /** The law, had that case not been there. */
  public LengthLaw without(int index) {
    List<double[]> others = new ArrayList<>(logs);
    others.remove(index);
    return law(others);
  }

  private double[] logs(ProvedLength proved) {
    double[] all = new double[exponents.size() * slopes.size()];
    for (int cell = 0; cell < all.length; cell++) {
      all[cell] = Math.log(proved.likelihood(exponent(cell), slope(cell)));
    }
    return all;
  }

  private double exponent(int cell) {
    return exponents.values()[cell / slopes.size()];
  }

  private double slope(int cell) {
    return slopes.values()[cell % slopes.size()];
  }

  /** Logarithms, because the product of many cases would leave the range of numbers. */
  private LengthLaw law(List<double[]> cases) {
    if (cases.isEmpty()) {
      return prior;
    }
    double[] sums = new double[exponents.size() * slopes.size()];
    cases.forEach(each -> Arrays.setAll(sums, cell -> sums[cell] + each[cell]));
    double most = Arrays.stream(sums).max().orElseThrow();
    Moments moments = new Moments();
    for (int cell = 0; cell < sums.length; cell++) {
      double weight =
          exponents.weights()[cell / slopes.size()]
              * slopes.weights()[cell % slopes.size()]
              * Math.exp(sums[cell] - most);
      moments.add(weight, exponent(cell), slope(cell));
    }
    return moments.law(prior);
  }

  /** Means and deviations of both. */
  private static final class Moments {
    private double weight;
    private double n;
    private double nSquared;
    private double c;
    private double cSquared;

    void add(double w, double exponent, double slope) {
      weight += w;
      n += w * exponent;
      nSquared += w * exponent * exponent;
      c += w * slope;
      cSquared += w * slope * slope;
    }

    /** Evidence that contradicts every law leaves the prior as it was. */
    LengthLaw law(LengthLaw prior) {
      if (!(weight > 0)) {
        return prior;
      }
      double meanN = n / weight;
      double meanC = c / weight;
      return new LengthLaw(
          meanN,
          Math.max(FLOOR_N, Math.sqrt(Math.max(0, nSquared / weight - meanN * meanN))),
          meanC,
          Math.max(FLOOR_C, Math.sqrt(Math.max(0, cSquared / weight - meanC * meanC))));
    }
  }
}
