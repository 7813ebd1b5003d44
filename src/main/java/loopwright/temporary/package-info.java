/** Parts that sit in a loop for a time only: until when, why, and what became of it. */
@NullMarked
package loopwright.temporary;

import org.jspecify.annotations.NullMarked;
