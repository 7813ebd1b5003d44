/**
 * What a loop's curve did to its monitor's set points: on the loop's page, on the page of every
 * record that was out of tolerance, and in the impact review that such a record opens.
 */
@NullMarked
package loopwright.exposure;

import org.jspecify.annotations.NullMarked;
