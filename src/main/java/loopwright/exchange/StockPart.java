package loopwright.exchange;

/**
 * A part on a shelf that may be fitted.
 *
 * @param shelf store and bin in words; empty when nobody said
 */
public record StockPart(FittedPart part, String shelf) {}
