package loopwright.print;

/**
 * A curve as it is and as it would be, in the units named; all arrays run along the same gaps.
 *
 * @param label the drawing in a sentence, for those who don't see it
 * @param gapUnit of gaps and of the set gap
 * @param present V
 * @param expected V
 * @param low lower end of what is expected, V
 * @param high upper end
 * @param setGap where the probe stands
 */
public record OutlookPicture(
    String label,
    String gapUnit,
    double[] gaps,
    double[] present,
    double[] expected,
    double[] low,
    double[] high,
    double setGap) {}
