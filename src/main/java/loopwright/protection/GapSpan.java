package loopwright.protection;

/** A stretch of gaps, µm; both ends belong to it. */
public record GapSpan(double nearMicrometres, double farMicrometres) {

  /** Refuses a stretch that doesn't rise. */
  public GapSpan {
    if (!(nearMicrometres < farMicrometres)) {
      throw new IllegalArgumentException("A stretch of gaps rises.");
    }
  }

  boolean holds(double gap) {
    return gap >= nearMicrometres && gap <= farMicrometres;
  }

  /** Largest movement peak to peak about a gap that stays inside, µm; 0 from outside. */
  double swingAbout(double gap) {
    return Math.max(0, 2 * Math.min(gap - nearMicrometres, farMicrometres - gap));
  }
}
