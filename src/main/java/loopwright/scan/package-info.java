/**
 * The scan check: do these parts belong together? Any order, by label, serial or photograph, judged
 * by the rules that judge loops.
 */
@NullMarked
package loopwright.scan;

import org.jspecify.annotations.NullMarked;
