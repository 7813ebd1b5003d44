/**
 * Gap rounds: the present gap voltages of a plant brought in as one file, like compared with like,
 * and the loops ranked that are worth a visit.
 */
@NullMarked
package loopwright.gapround;

import org.jspecify.annotations.NullMarked;
