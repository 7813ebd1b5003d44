/**
 * Reference standards: the measuring equipment that calibrations are made with, its certificates,
 * intermediate checks and what it was used for.
 */
@NullMarked
package loopwright.standard;

import org.jspecify.annotations.NullMarked;
