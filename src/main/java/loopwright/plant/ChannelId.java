package loopwright.plant;

/** Number of a channel. */
public record ChannelId(long number) {}
