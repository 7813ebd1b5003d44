/**
 * What two numbers of a loop, gap voltage and sensitivity, say about what is wrong with it: weighed
 * hypotheses, the fitted length they imply and the measurement that would tell most (pure).
 */
@NullMarked
package loopwright.cause;

import org.jspecify.annotations.NullMarked;
