/**
 * What is fitted where: placements over two times, the three ways a configuration changes (survey,
 * assembly, correction), how each loop is judged now, and the pages that show it.
 */
@NullMarked
package loopwright.loop;

import org.jspecify.annotations.NullMarked;
