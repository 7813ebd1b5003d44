/**
 * Work packs: what is handed out for an outage, frozen revision by revision; on paper, as a
 * workbook to fill in, and what comes back.
 */
@NullMarked
package loopwright.pack;

import org.jspecify.annotations.NullMarked;
