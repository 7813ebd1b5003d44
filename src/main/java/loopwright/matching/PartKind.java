package loopwright.matching;

import java.util.Optional;
import java.util.stream.Stream;

/** Kinds of component that the register knows. */
public enum PartKind {
  PROBE("probe", Place.PROBE_SLOT, true),
  CABLE("extension cable", Place.PATH, true),
  ADAPTER("adapter", Place.PATH, true),
  FEEDTHROUGH("feedthrough", Place.PATH, true),
  DRIVER("driver", Place.DRIVER_SLOT, true),
  TRANSMITTER("transmitter", Place.DRIVER_SLOT, true),
  BARRIER("barrier", Place.AFTER_DRIVER, true),
  ISOLATOR("isolator", Place.AFTER_DRIVER, true),
  ACCELEROMETER("accelerometer", Place.PROBE_SLOT, false),
  VELOCITY_SENSOR("velocity sensor", Place.PROBE_SLOT, false),
  SPEED_PICKUP("speed pickup", Place.PROBE_SLOT, false);

  /** Which slot takes it. */
  public enum Place {
    PROBE_SLOT,
    PATH,
    DRIVER_SLOT,
    /** No slot of the chain that is counted. */
    AFTER_DRIVER
  }

  private final String word;
  private final Place place;
  private final boolean proximity;

  PartKind(String word, Place place, boolean proximity) {
    this.word = word;
    this.place = place;
    this.proximity = proximity;
  }

  public String word() {
    return word;
  }

  public Place place() {
    return place;
  }

  /** Whether it is part of a proximity loop; others are registered but not judged. */
  public boolean isProximity() {
    return proximity;
  }

  /** The one of that word, in any case. */
  public static Optional<PartKind> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
