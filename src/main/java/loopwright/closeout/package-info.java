/**
 * Closing an outage: what was done, what was not and why, what is still open, and where it goes.
 */
@NullMarked
package loopwright.closeout;

import org.jspecify.annotations.NullMarked;
