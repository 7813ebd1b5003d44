/**
 * How a probe is mounted and reached: thread, torque, depth, terminals, what must be taken off
 * first, and how long the work takes. Printed on the sheets of work packs; nothing is judged by it.
 */
@NullMarked
package loopwright.mounting;

import org.jspecify.annotations.NullMarked;
