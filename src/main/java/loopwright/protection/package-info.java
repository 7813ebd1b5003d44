/**
 * What a loop's real curve does to the set points of its monitor: at which true level they act, how
 * far the signal goes before it leaves the straight part, and what the OK limits stand for. Pure
 * arithmetic (own calculation from the definition of a scale factor).
 */
@NullMarked
package loopwright.protection;

import org.jspecify.annotations.NullMarked;
