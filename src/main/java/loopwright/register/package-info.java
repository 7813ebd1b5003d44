/**
 * Families, parts and what is believed of them over two times, tolerance profiles as data. Reads,
 * but never writes, the placements of {@code loop} to say where a part is and has been.
 */
@NullMarked
package loopwright.register;

import org.jspecify.annotations.NullMarked;
