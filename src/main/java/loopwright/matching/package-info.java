/**
 * What is judged when components meet: an immutable view of one loop, the verdicts, and the
 * mechanism that every rule joins. Pure: knows neither database nor pages; the rules themselves are
 * in {@code rules}.
 */
@NullMarked
package loopwright.matching;

import org.jspecify.annotations.NullMarked;
