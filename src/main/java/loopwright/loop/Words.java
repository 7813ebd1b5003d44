package loopwright.loop;

import loopwright.matching.PartKind;

/** What people call the slots. */
public final class Words {
  private Words() {}

  /** By what stands in it, else by what usually does. */
  static String slot(Slot slot, loopwright.matching.Slot content) {
    return content.part().map(part -> part.kind().word()).orElse(usual(slot));
  }

  /** By what usually stands in it. */
  public static String usual(Slot slot) {
    if (slot == Slot.PROBE) {
      return PartKind.PROBE.word();
    }
    if (slot == Slot.DRIVER) {
      return PartKind.DRIVER.word();
    }
    return slot == Slot.PATH_1 ? "extension cable" : "path " + (slot.ordinal());
  }
}
