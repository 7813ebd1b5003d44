package loopwright.plant;

import java.util.List;

/**
 * Channels that vote before a machine trips.
 *
 * @param logic reads like 2oo3: two out of three
 */
public record VotingGroup(long id, SiteId site, String name, String logic, List<Channel> members) {}
