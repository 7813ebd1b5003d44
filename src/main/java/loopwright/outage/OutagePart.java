package loopwright.outage;

import org.jooq.DSLContext;

/** What another feature keeps of an outage, as its page links to it. */
public interface OutagePart {

  /**
   * A link with a word about what lies behind it.
   *
   * @param sentence how it stands; may be empty
   */
  record Link(String label, String href, String sentence) {}

  Link link(DSLContext sql, Outage outage);
}
