package loopwright.cause;

import java.util.Locale;
import loopwright.units.Length;

/** A cause in words: what would be wrong and how it makes these numbers. */
final class Explanation {
  private final Situation situation;
  private final RankedCause ranked;

  private Explanation(Situation situation, RankedCause ranked) {
    this.situation = situation;
    this.ranked = ranked;
  }

  /** With what would be expected and what was measured. */
  static String of(Situation situation, RankedCause ranked) {
    return new Explanation(situation, ranked).whole();
  }

  /** The reason alone. */
  static String reason(Situation situation, RankedCause ranked) {
    return new Explanation(situation, ranked).words();
  }

  private String words() {
    return reason() + (ranked.regapped() ? " " + regapped() : "");
  }

  private String whole() {
    return words()
        + " Expected then: "
        + Told.volts(ranked.predictedVolts())
        + " and "
        + Told.sensitivity(ranked.predictedSensitivity())
        + "; measured: "
        + Told.volts(situation.seen().volts())
        + " and "
        + Told.sensitivity(situation.seen().sensitivity())
        + ".";
  }

  private String reason() {
    return switch (ranked.cause()) {
      case HEALTHY -> "Volts and sensitivity are as they were, as nearly as they were measured.";
      case GAP_MOVED ->
          "The loop is as it was, but probe or shaft stands elsewhere: at "
              + Told.gap(ranked.gapMicrometres())
              + " instead of "
              + Told.gap(situation.baseline().setGapMicrometres())
              + ". A wrong cable would have changed the sensitivity too.";
      case OVER_LENGTH ->
          wrongLength("too much")
              + " More cable lowers the whole curve: at the same gap the volts are less negative and"
              + " the sensitivity is low, so vibration is under-read and protection acts late.";
      case UNDER_LENGTH ->
          wrongLength("too little")
              + " Less cable raises the whole curve: at the same gap the volts are more negative and"
              + " the sensitivity is high, so vibration is over-read.";
      case ODD_LENGTH ->
          "A cable was cut and re-terminated, or isn't as long electrically as it is marked: a total"
              + " that is sold nowhere. Markings won't show it; capacitance or a curve does.";
      case OTHER_DRIVER ->
          "The cables may be right and the driver be tuned for another system length. That gives the"
              + " same two numbers as a wrong cable; only the labels tell them apart.";
      case BEYOND_MODEL ->
          "The total length is off by more than a quarter of the system length, "
              + (ranked.factor() < 1 ? "rather too long" : "rather too short")
              + ": beyond the model, which then tells a direction but no length.";
      case CONNECTOR ->
          "A wet or dirty connector loads the probe as more cable would; it mimics a long cable in"
              + " both numbers.";
      case LOADING ->
          "A meter or barrier loads the output: volts and sensitivity drop by one and the same"
              + " factor.";
      case OTHER_SCALE ->
          "The probe or the driver belongs to a family of another tip or scale factor.";
      case OTHER_ALLOY ->
          "The target is of another alloy than the loop was calibrated on; a non-magnetic one raises"
              + " volts and sensitivity.";
      case SIDE_VIEW ->
          "The tip sees the wall of its bore or an edge beside the target: the volts may look right"
              + " while the sensitivity is low.";
      case CROSS_TALK ->
          "Another probe is too near: both numbers are a little off, either way, and unsteady.";
      case SUPPLY_LOW ->
          "The supply at the driver is too low: the output can't go as far down, and near that end"
              + " it hardly moves.";
      case OPEN_OR_SHORT ->
          "The probe circuit is open or shorted: the output rests at one end and hardly moves.";
      case OTHER_CHANNEL ->
          "These are the numbers of another loop, landed on these terminals: healthy, but of another"
              + " gap.";
      case MONITOR_SCALE ->
          "The monitor counts with another scale factor than the loop has: its reading is off, the"
              + " volts are not.";
      case DRIVER_FAULT ->
          "The driver drifted or fails: level and slope are off by amounts that have nothing to do"
              + " with each other.";
      case METER_ERROR ->
          "One of the two instruments is wrong: the voltmeter, or what the vibration was compared"
              + " with.";
    };
  }

  private String wrongLength(String side) {
    Length fitted = new Length(ranked.fittedLength().orElseThrow());
    Length extra = fitted.minus(situation.systemLength()).abs();
    String words = Told.difference(extra);
    return words.substring(0, 1).toUpperCase(Locale.ROOT)
        + words.substring(1)
        + " of cable "
        + side
        + ": "
        + fitted.inMetres()
        + " on a driver tuned for "
        + situation.systemLength().inMetres()
        + ".";
  }

  private String regapped() {
    String away =
        ranked.gapMicrometres() > situation.baseline().setGapMicrometres()
            ? "away from the shaft"
            : "nearer to the shaft";
    return "The probe was then moved "
        + away
        + " until the volts looked right: it stands at about "
        + Told.gap(ranked.gapMicrometres())
        + " instead of "
        + Told.gap(situation.baseline().setGapMicrometres())
        + ", and the gap voltage hides the fault.";
  }
}
