package loopwright.matching;

import org.jspecify.annotations.Nullable;

/**
 * By what a component is known. A part without a serial gets a shop number; one with neither is
 * fitted but not identified.
 */
public record PartName(
    @Nullable String maker,
    @Nullable String model,
    @Nullable String serial,
    @Nullable String shopNumber) {
  public static final PartName NOT_IDENTIFIED = new PartName(null, null, null, null);

  public static PartName serial(String serial) {
    return new PartName(null, null, serial, null);
  }

  public boolean isIdentified() {
    return serial != null || shopNumber != null;
  }

  /** The serial, else the shop number, else nothing. */
  public String text() {
    return serial != null ? serial : shopNumber != null ? "shop no. " + shopNumber : "";
  }
}
