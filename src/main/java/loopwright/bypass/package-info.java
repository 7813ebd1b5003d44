/**
 * The bypass log: which protective function is inhibited under the site's own procedure, whose it
 * is, and the proof that it is off again. A record only; it permits nothing.
 */
@NullMarked
package loopwright.bypass;

import org.jspecify.annotations.NullMarked;
