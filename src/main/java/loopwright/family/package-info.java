/** Families as engineers keep them: edited with a reason, every version readable. */
@NullMarked
package loopwright.family;

import org.jspecify.annotations.NullMarked;
