/**
 * Who may sign in, as what, and with which password. A person is never deleted, only made inactive.
 */
@NullMarked
package loopwright.people;

import org.jspecify.annotations.NullMarked;
