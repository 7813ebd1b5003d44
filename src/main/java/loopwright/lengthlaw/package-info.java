/**
 * What confirmed wrong lengths have taught about the length law of a family: the evidence, what it
 * makes of the law, and how it is withdrawn. Guesses never count.
 */
@NullMarked
package loopwright.lengthlaw;

import org.jspecify.annotations.NullMarked;
