/**
 * The plant as it stands: sites with their clocks, trains, machines, tagged points, monitor
 * channels and what they were told, voting groups.
 */
@NullMarked
package loopwright.plant;

import org.jspecify.annotations.NullMarked;
