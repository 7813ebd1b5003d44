package loopwright.register;

import java.util.List;

/**
 * A part in a list.
 *
 * @param family code; empty if it isn't known
 * @param now where it is fitted; empty if nowhere
 */
public record PartRow(Component part, String family, List<Whereabouts> now) {}
