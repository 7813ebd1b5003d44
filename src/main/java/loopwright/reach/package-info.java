/**
 * What follows when a reference standard is found out: every calibration that it touched, worked
 * out again without its error.
 */
@NullMarked
package loopwright.reach;

import org.jspecify.annotations.NullMarked;
