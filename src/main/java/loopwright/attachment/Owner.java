package loopwright.attachment;

import java.util.Optional;
import org.jooq.DSLContext;

/**
 * A record that holds files.
 *
 * @param number of the record
 * @param label as people call it
 * @param href of its page
 */
public record Owner(OwnerKind kind, long number, String label, String href) {

  /** Finds a record by what its page's address calls it: a tag, a number, a code. */
  public interface Finder {
    Optional<Owner> find(DSLContext sql, String reference);
  }
}
