package loopwright.demo;

import java.util.Map;

/**
 * A point of the invented plant.
 *
 * @param system system length its loop is made for, in the family's unit
 * @param lead of its probe when it was built
 * @param inMil whether the shop there works in mil
 * @param cells its row of points.csv, heading to text
 */
record DemoPoint(
    String tag,
    DemoTrain train,
    DemoFamily family,
    String system,
    String lead,
    boolean inMil,
    Map<String, String> cells) {

  /** The cable that makes the lead up to the system length; empty when the lead does. */
  String cable() {
    double rest = Double.parseDouble(system) - Double.parseDouble(lead);
    return family.cables.stream()
        .filter(cable -> Double.parseDouble(cable) == rest)
        .findFirst()
        .orElse("");
  }

  boolean isAxial() {
    return "axial position".equals(cells.get("kind"));
  }
}
