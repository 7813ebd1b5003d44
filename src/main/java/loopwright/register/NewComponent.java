package loopwright.register;

import java.time.Instant;

/**
 * A part to be registered.
 *
 * @param from since when it is known to be so
 */
public record NewComponent(ComponentDetails details, ComponentFacts facts, Instant from) {}
