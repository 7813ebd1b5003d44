/**
 * Published reasons for refusing, with stable codes: a person gets the sentence, the log the cause.
 */
@NullMarked
package loopwright.problem;

import org.jspecify.annotations.NullMarked;
