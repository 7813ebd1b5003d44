package loopwright.loop;

import loopwright.time.Span;

/**
 * A repair of the record: over that range of moments this sat in the slot, whatever was believed
 * before.
 */
public record Correction(long point, Slot slot, Content content, Span span) {}
