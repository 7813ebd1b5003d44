/**
 * How a figure moves over the years, and what that says about the time between calibrations. Pure:
 * no database, no pages.
 */
@NullMarked
package loopwright.trend;

import org.jspecify.annotations.NullMarked;
