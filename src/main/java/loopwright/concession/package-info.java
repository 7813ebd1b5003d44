/**
 * Permission to leave a loop that breaks a named rule: asked for by one person, decided by another,
 * bound to exactly the parts it names, and never for ever.
 */
@NullMarked
package loopwright.concession;

import org.jspecify.annotations.NullMarked;
