/** What lies between a driver and its monitor: barrier or isolator, and the cable in the field. */
@NullMarked
package loopwright.circuit;

import org.jspecify.annotations.NullMarked;
