/**
 * How loops out of balance are put right with what the plant has: reads loops and stock, asks
 * {@link loopwright.exchange} and tells its proposal on a page, as lines and as a document.
 */
@NullMarked
package loopwright.remedy;

import org.jspecify.annotations.NullMarked;
