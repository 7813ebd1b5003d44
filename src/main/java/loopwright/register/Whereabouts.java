package loopwright.register;

import java.time.ZoneId;
import loopwright.time.Span;

/**
 * One stay of a part in a loop.
 *
 * @param point number of the point
 * @param slot of the chain: probe, path-1 …, driver
 * @param channel of a driver box with several; 1 otherwise
 * @param source how it is known: survey, assembly, correction, import, displaced
 * @param made by which change
 * @param zone the site's clock
 */
public record Whereabouts(
    long point,
    String tag,
    String train,
    String slot,
    int channel,
    Span span,
    String source,
    ChangeNote made,
    ZoneId zone) {}
