/** The invented plant: its files, shifted so that their reference day becomes today, and loaded. */
@NullMarked
package loopwright.demo;

import org.jspecify.annotations.NullMarked;
