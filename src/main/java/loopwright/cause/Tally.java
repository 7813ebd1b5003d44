package loopwright.cause;

/** Sums over everything that a variant allows, weighted by how well it fits what was seen. */
final class Tally {
  private double weight;
  private double lnFactor;
  private double perMillimetre;
  private double offset;
  private double lnSensitivity;
  private double factor;
  private double factorSquared;
  private double gap;
  private double gapSquared;

  void add(double w, Distortion distortion, double atGap) {
    weight += w;
    lnFactor += w * distortion.lnFactor();
    perMillimetre += w * distortion.perMillimetre();
    offset += w * distortion.offsetVolts();
    lnSensitivity += w * distortion.lnSensitivity();
    double k = Math.exp(distortion.lnFactor());
    factor += w * k;
    factorSquared += w * k * k;
    gap += w * atGap;
    gapSquared += w * atGap * atGap;
  }

  /** Adds another tally, its weights multiplied by a share. */
  void add(Tally other, double share) {
    weight += share * other.weight;
    lnFactor += share * other.lnFactor;
    perMillimetre += share * other.perMillimetre;
    offset += share * other.offset;
    lnSensitivity += share * other.lnSensitivity;
    factor += share * other.factor;
    factorSquared += share * other.factorSquared;
    gap += share * other.gap;
    gapSquared += share * other.gapSquared;
  }

  /** Likelihood of what was seen. */
  double weight() {
    return weight;
  }

  boolean isEmpty() {
    return !(weight > 0);
  }

  /** The mean distortion; none where nothing fits at all. */
  Distortion distortion() {
    return isEmpty()
        ? Distortion.NONE
        : new Distortion(
            lnFactor / weight, perMillimetre / weight, offset / weight, lnSensitivity / weight);
  }

  double meanFactor() {
    return isEmpty() ? 1 : factor / weight;
  }

  double factorDeviation() {
    return isEmpty() ? 0 : deviation(factor, factorSquared);
  }

  /** µm; NaN where nothing fits at all. */
  double meanGap() {
    return gap / weight;
  }

  double gapDeviation() {
    return isEmpty() ? 0 : deviation(gap, gapSquared);
  }

  private double deviation(double sum, double squares) {
    double mean = sum / weight;
    return Math.sqrt(Math.max(0, squares / weight - mean * mean));
  }
}
