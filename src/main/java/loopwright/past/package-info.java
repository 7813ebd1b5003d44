/** What differs between two moments, or between what was known then and then. */
@NullMarked
package loopwright.past;

import org.jspecify.annotations.NullMarked;
