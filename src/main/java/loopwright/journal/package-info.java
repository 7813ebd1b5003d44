/**
 * The append-only record of every change: hash chain over canonical entries, and its verification.
 */
@NullMarked
package loopwright.journal;

import org.jspecify.annotations.NullMarked;
