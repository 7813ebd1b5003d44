package loopwright.cause;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * The cables are right, the driver is tuned for another system length. The same signature as wrong
 * cables; only the labels tell them apart.
 */
record OtherDriver() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.OTHER_DRIVER;
  }

  private static final double[] SOLD = {1, 4, 5, 6, 7, 8, 9, 10, 14};
  private static final double[] NEAR = {-0.5, 0.5};
  private static final double REGAPPED = 0.4;

  @Override
  public List<Variant> variants(Situation situation) {
    double fitted = situation.systemMetres();
    double[] others =
        DoubleStream.concat(
                Arrays.stream(SOLD).filter(metres -> Math.abs(metres - fitted) > 0.75),
                Arrays.stream(NEAR).map(metres -> fitted + metres).filter(m -> m > 0.4))
            .toArray();
    List<Likelihood.Node> all = new ArrayList<>();
    for (double metres : others) {
      all.addAll(Lengths.fine(situation.lawHere(), Math.log(metres / fitted), 1.0 / others.length));
    }
    List<Likelihood.Node> nodes = List.copyOf(all);
    Signs signs = Signs.none().distorted().marked(Signs.Labels.OTHER_DRIVER);
    return List.of(
        new Variant(
            Optional.empty(),
            false,
            1 - REGAPPED,
            new Likelihood.Distorted(nodes, GapBelief.AS_SET),
            signs),
        new Variant(
            Optional.empty(),
            true,
            REGAPPED,
            new Likelihood.Distorted(nodes, GapBelief.REGAPPED),
            signs));
  }
}
