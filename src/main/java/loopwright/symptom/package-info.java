/**
 * The page on which gap voltage and sensitivity of a loop are typed and {@code cause} tells what is
 * likely wrong, with what the register knows of the loop beside it.
 */
@NullMarked
package loopwright.symptom;

import org.jspecify.annotations.NullMarked;
