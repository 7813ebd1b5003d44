/**
 * Outages: when which trains stand still, which loops are worked on then and why, and what the work
 * consists of.
 */
@NullMarked
package loopwright.outage;

import org.jspecify.annotations.NullMarked;
