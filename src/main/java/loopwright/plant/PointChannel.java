package loopwright.plant;

import org.jspecify.annotations.Nullable;

/**
 * A channel that a point feeds, with the newest settings.
 *
 * @param approved what it was told; null when nobody entered it
 * @param found what somebody read out of it; null when nobody did
 */
public record PointChannel(
    Channel channel,
    ChannelRole role,
    @Nullable ChannelSetting approved,
    @Nullable ChannelSetting found) {}
