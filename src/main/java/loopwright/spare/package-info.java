/**
 * Spares put aside for an outage: proved to match before they are held, held for one loop only,
 * fetched by store and bin, released when the outage is closed.
 */
@NullMarked
package loopwright.spare;

import org.jspecify.annotations.NullMarked;
