/**
 * Files of a shop become records: every row's fate is planned and shown first, then exactly that
 * plan is run, all of it or nothing.
 */
@NullMarked
package loopwright.importing;

import org.jspecify.annotations.NullMarked;
