package loopwright.importing;

import java.util.Locale;

/** What would become of a row. */
public enum Fate {
  /** Not in the register yet. */
  ADDED,
  /** There, and some of it differs. */
  CHANGED,
  /** There exactly so. */
  UNCHANGED,
  /** Can't be taken up; nothing of the import is. */
  REFUSED;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
