package loopwright.standard;

import java.util.List;
import org.jooq.DSLContext;

/** What a reference standard was used for; calibrations tell it. */
public interface StandardUses {
  /**
   * One use.
   *
   * @param when on the reader's clock
   * @param certificate it was used on
   * @param said the verdict
   */
  record Use(
      String href, String number, String when, String tag, String certificate, String said) {}

  /** Newest first. */
  List<Use> of(DSLContext sql, long standard, int most);
}
