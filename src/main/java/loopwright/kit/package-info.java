/**
 * Matched kits: parts kept together, with what was measured of them together, and what is said when
 * one of them goes alone.
 */
@NullMarked
package loopwright.kit;

import org.jspecify.annotations.NullMarked;
