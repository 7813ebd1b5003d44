/**
 * The other records of a job beside the static curve: gap readings with the machine's state,
 * electrical checks, channel checks, slow-roll vectors, dynamic checks and frequency responses. All
 * are insert-only, keep what was typed, and stand in the loop's history.
 */
@NullMarked
package loopwright.fieldcheck;

import org.jspecify.annotations.NullMarked;
