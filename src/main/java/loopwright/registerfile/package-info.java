/** A shop's register and its list of families as files, read and judged without any database. */
@NullMarked
package loopwright.registerfile;

import org.jspecify.annotations.NullMarked;
