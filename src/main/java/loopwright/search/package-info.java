/** The find box: tags, serials, makers and parts of them, over points and parts at once. */
@NullMarked
package loopwright.search;

import org.jspecify.annotations.NullMarked;
