/**
 * Who may sign calibrations, signing and reviewing them, and concessions for equipment out of date.
 */
@NullMarked
package loopwright.signing;

import org.jspecify.annotations.NullMarked;
