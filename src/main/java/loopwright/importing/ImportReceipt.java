package loopwright.importing;

import java.time.Instant;

/**
 * That a plan was run.
 *
 * @param change number of the change that wrote everything; 0 when there was nothing to write
 * @param writtenAt when
 * @param by who ran it
 */
public record ImportReceipt(
    String plan, long change, Instant writtenAt, String by, String reason, RowCounts counts) {}
