/**
 * Calibrations: drafts while a curve is typed, results kept against exactly the parts they were
 * taken with, and the pages on which they are entered and read.
 */
@NullMarked
package loopwright.calibration;

import org.jspecify.annotations.NullMarked;
