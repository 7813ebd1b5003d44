/**
 * Dynamic checks: amplitudes of a sine, the sensitivity they give, frequency response and what a
 * field cable takes away. Pure: no database, no pages.
 */
@NullMarked
package loopwright.dynamic;

import org.jspecify.annotations.NullMarked;
