package loopwright.register;

/** Number of a component. */
public record ComponentId(long number) {}
