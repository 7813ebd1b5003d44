package loopwright.curve;

/** A stretch of gaps, both ends included. */
public record GapRange(double fromMicrometres, double toMicrometres) {

  /** Refuses a stretch that ends before it begins. */
  public GapRange {
    if (!(fromMicrometres <= toMicrometres)) {
      throw new IllegalArgumentException("A stretch of gaps ends where it began or beyond.");
    }
  }

  public double lengthMicrometres() {
    return toMicrometres - fromMicrometres;
  }

  public double middleMicrometres() {
    return fromMicrometres + lengthMicrometres() / 2;
  }
}
