/** The rules, each a small class, and the book that holds them in the order they are told. */
@NullMarked
package loopwright.matching.rules;

import org.jspecify.annotations.NullMarked;
