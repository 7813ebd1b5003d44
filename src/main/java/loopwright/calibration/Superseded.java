package loopwright.calibration;

import java.time.Instant;

/**
 * That another record stands in the place of a calibration.
 *
 * @param by number of the other one
 */
public record Superseded(String by, String reason, String who, Instant at) {}
