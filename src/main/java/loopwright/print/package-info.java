/**
 * Drawings as SVG text, written by us: coordinates from plain data, looks from style classes. Knows
 * no feature.
 */
@NullMarked
package loopwright.print;

import org.jspecify.annotations.NullMarked;
