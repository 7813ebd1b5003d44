package loopwright.cause;

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

  private LawLearning() {}

  /** The law after the evidence; the prior where there is none. */
  public static LengthLaw learnt(LengthLaw prior, List<ProvedLength> evidence) {
    if (evidence.isEmpty()) {
      return prior;
    }
    Grid exponents = prior.exponents(EXPONENTS);
    Grid slopes = prior.slopes(SLOPES);
    Moments moments = new Moments();
    for (int i = 0; i < exponents.size(); i++) {
      for (int j = 0; j < slopes.size(); j++) {
        double n = exponents.values()[i];
        double c = slopes.values()[j];
        double weight = exponents.weights()[i] * slopes.weights()[j];
        for (ProvedLength each : evidence) {
          weight *= each.likelihood(n, c);
        }
        moments.add(weight, n, c);
      }
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
