/**
 * Certificates of calibrations: a report frozen as text and drawings, then written as PDF; the raw
 * points as CSV.
 */
@NullMarked
package loopwright.certificate;

import org.jspecify.annotations.NullMarked;
