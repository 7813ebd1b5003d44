/**
 * Labels of parts and loops: the short address that each has for ever, and sheets to print. Scanned
 * texts are read here.
 */
@NullMarked
package loopwright.label;

import org.jspecify.annotations.NullMarked;
