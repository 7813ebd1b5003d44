/**
 * Moments and days: half-open ranges of moments, days in a site's zone, the clock that is handed
 * in.
 */
@NullMarked
package loopwright.time;

import org.jspecify.annotations.NullMarked;
