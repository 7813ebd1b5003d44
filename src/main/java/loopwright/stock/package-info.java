/**
 * How many spares of each sort are to lie in stock, what is missing, and what the fitted population
 * and its use suggest.
 */
@org.jspecify.annotations.NullMarked
package loopwright.stock;
