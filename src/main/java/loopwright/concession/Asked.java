package loopwright.concession;

import java.time.Instant;
import java.util.List;

/**
 * What somebody asks for.
 *
 * @param rules names of refused rules
 * @param measure what is done meanwhile to make up for it
 */
record Asked(
    long point,
    String fingerprint,
    ConcessionKind kind,
    List<String> rules,
    String reason,
    String measure,
    Instant expiresAt) {}
