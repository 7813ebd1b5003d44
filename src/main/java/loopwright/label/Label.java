package loopwright.label;

import java.util.List;

/**
 * What one label says.
 *
 * @param address that its QR code leads to
 * @param large one or two words or lengths, printed as large as fits
 * @param kind what it is, and what stands in large
 * @param family code; empty if it isn't known
 * @param serial always printed whole
 * @param about maker and model; shortened if there is no room
 */
record Label(
    String address,
    LabelCode code,
    List<String> large,
    String kind,
    String family,
    String serial,
    String about) {
  Label {
    large = List.copyOf(large);
  }

  /** Kind and family. */
  String inWords() {
    return family.isEmpty() ? kind : kind + " · " + family;
  }
}
