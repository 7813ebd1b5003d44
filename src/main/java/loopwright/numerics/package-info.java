/**
 * Small numerical tools on plain doubles; units are the caller's and are kept in its names.
 *
 * <p>Policy for every class here: a NaN, an infinity or a magnitude above 1e100 (whose square could
 * overflow) among the inputs, or fewer values than the method needs, is refused with {@link
 * IllegalArgumentException}; nothing is skipped. What comes out is therefore always a finite
 * number, except a ratio that is truly unbounded, whose Javadoc says so. Sums are formed about the
 * mean (two passes). Distributions come from Commons Statistics.
 */
@NullMarked
package loopwright.numerics;

import org.jspecify.annotations.NullMarked;
