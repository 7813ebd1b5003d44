/** Groups of target alloys to which a probe answers alike, as the engineers keep them. */
@NullMarked
package loopwright.alloy;

import org.jspecify.annotations.NullMarked;
