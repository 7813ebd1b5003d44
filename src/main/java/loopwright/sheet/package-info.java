/**
 * Tables in and out of files. Knows no feature: headings and cells, with the row each came from.
 */
@NullMarked
package loopwright.sheet;

import org.jspecify.annotations.NullMarked;
