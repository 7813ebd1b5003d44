/**
 * What other parts or another total length would do to a loop: its expected curve, sensitivity, gap
 * voltage and set points, with the uncertainty of the length law. Nothing is stored.
 */
@NullMarked
package loopwright.whatif;

import org.jspecify.annotations.NullMarked;
