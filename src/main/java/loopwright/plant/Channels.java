package loopwright.plant;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;

/** Monitor channels: what they were told, which points feed them, how they vote. */
public final class Channels {
  private static final Pattern LOGIC = Pattern.compile("[1-9]oo[1-9]");

  private final ChannelStore store = new ChannelStore();
  private final ChannelSettingStore settings = new ChannelSettingStore();
  private final PointStore points = new PointStore();
  private final PointWatch watch;

  /**
   * @param watch told of each point that feeds a channel which was set or tied to it
   */
  public Channels(PointWatch watch) {
    this.watch = watch;
  }

  public Optional<Channel> channel(DSLContext sql, ChannelId id) {
    return store.channel(sql, id);
  }

  public Optional<Channel> at(DSLContext sql, SiteId site, Channel.Position position) {
    return store.at(sql, site, position);
  }

  /** The channels that a point feeds, each with its newest approved and found setting. */
  public List<PointChannel> ofPoint(DSLContext sql, PointId point) {
    return store.ofPoint(sql, point);
  }

  /**
   * What the channels that measure a point do at a moment, as known then; a channel of which no
   * setting is on record is left out.
   */
  public List<ChannelInForce> measuring(DSLContext sql, PointId point, Viewpoint viewpoint) {
    return settings
        .measuredFrom(sql, List.of(point.number()), viewpoint)
        .getOrDefault(point.number(), List.of());
  }

  /** Every setting of one basis, newest first. */
  public List<ChannelSetting> settings(DSLContext sql, ChannelId channel, SettingBasis basis) {
    return store.settings(sql, channel, basis, 1_000);
  }

  /** The groups in which a channel votes, with all their members. */
  public List<VotingGroup> groupsOf(DSLContext sql, ChannelId channel) {
    return store.groupsOf(sql, channel);
  }

  /**
   * @throws Refused {@link PlantProblem#CHANNEL_TAKEN} if the site has that channel
   */
  public ChannelId add(Tx tx, SiteId site, Channel.Position position) {
    if (at(tx.sql(), site, position).isPresent()) {
      throw new Refused(
          PlantProblem.CHANNEL_TAKEN, position.rack(), position.slot(), position.channel());
    }
    return store.insert(tx, site, position);
  }

  /** Adds a setting; those before stay readable. */
  public void set(Tx tx, ChannelId channel, ChannelSetting setting) {
    store.insert(tx, needed(tx, channel).id(), setting);
    settings.feeding(tx.sql(), channel).forEach(point -> watch.pointChanged(tx, point));
  }

  /**
   * Ties a point to a channel of its site.
   *
   * @throws Refused {@link PlantProblem#LINKED} if they are tied already
   */
  public void link(Tx tx, PointId point, ChannelId channel, ChannelRole role) {
    Channel known = needed(tx, channel);
    String tag =
        points
            .point(tx.sql(), point)
            .orElseThrow(() -> new Refused(PlantProblem.NOT_THERE, "point", point.number()))
            .tag();
    boolean sameSite =
        points.place(tx.sql(), point).map(at -> at.site().id().equals(known.site())).orElse(false);
    if (!sameSite) {
      throw new Refused(PlantProblem.OTHER_SITE, tag);
    }
    if (store.isLinked(tx.sql(), point, channel)) {
      throw new Refused(PlantProblem.LINKED, tag);
    }
    store.link(tx, point, channel, role);
    watch.pointChanged(tx, point);
  }

  /**
   * Adds a voting group with its channels.
   *
   * @param logic like 2oo3
   */
  public long addGroup(Tx tx, SiteId site, String name, String logic, List<ChannelId> members) {
    String kept = Text.needed("the group's name", name, 60);
    if (!LOGIC.matcher(logic).matches()) {
      throw new Refused(
          PlantProblem.UNKNOWN_WORD, logic, "a voting logic", "1oo1, 1oo2, 2oo2, 2oo3");
    }
    if (store.hasGroup(tx.sql(), site, kept)) {
      throw new Refused(PlantProblem.CODE_TAKEN, "Voting group", kept);
    }
    long group = store.insertGroup(tx, site, kept, logic);
    members.stream().distinct().forEach(channel -> store.addMember(tx, group, channel));
    return group;
  }

  private Channel needed(Tx tx, ChannelId channel) {
    return channel(tx.sql(), channel)
        .orElseThrow(() -> new Refused(PlantProblem.NOT_THERE, "channel", channel.number()));
  }
}
