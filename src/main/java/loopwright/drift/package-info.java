/**
 * Drift of loops and parts over the years, when the next calibration is due, and which interval
 * their history suggests.
 */
@NullMarked
package loopwright.drift;

import org.jspecify.annotations.NullMarked;
