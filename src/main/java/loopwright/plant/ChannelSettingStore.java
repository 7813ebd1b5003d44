package loopwright.plant;

import static loopwright.db.gen.Tables.CHANNEL;
import static loopwright.db.gen.Tables.CHANNEL_SETTING;
import static loopwright.db.gen.Tables.POINT_CHANNEL;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ChannelSettingRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jooq.Result;

/** Settings of the channels that many points feed, read in one pass. */
final class ChannelSettingStore {

  /** Channels that measure what the points see, with a setting on record, in their order. */
  Map<Long, List<ChannelInForce>> measuredFrom(
      DSLContext sql, Collection<Long> points, Viewpoint viewpoint) {
    Map<Long, List<Channel>> fed =
        sql.select(CHANNEL.asterisk(), POINT_CHANNEL.POINT_ID)
            .from(POINT_CHANNEL)
            .join(CHANNEL)
            .on(CHANNEL.ID.eq(POINT_CHANNEL.CHANNEL_ID))
            .where(POINT_CHANNEL.POINT_ID.in(points))
            .and(POINT_CHANNEL.ROLE.eq(ChannelRole.MEASURES.word()))
            .orderBy(CHANNEL.RACK, CHANNEL.SLOT_NO, CHANNEL.CHANNEL_NO)
            .fetchGroups(POINT_CHANNEL.POINT_ID, ChannelStore::channel);
    Set<Long> channels = new HashSet<>();
    fed.values().forEach(some -> some.forEach(channel -> channels.add(channel.id().number())));
    Map<Long, Map<SettingBasis, ChannelSetting>> settings = newest(sql, channels, viewpoint);
    Map<Long, List<ChannelInForce>> views = new HashMap<>();
    fed.forEach((point, some) -> views.put(point, views(some, settings)));
    return views;
  }

  private static List<ChannelInForce> views(
      List<Channel> channels, Map<Long, Map<SettingBasis, ChannelSetting>> settings) {
    List<ChannelInForce> views = new ArrayList<>();
    for (Channel channel : channels) {
      Map<SettingBasis, ChannelSetting> both = settings.get(channel.id().number());
      if (both != null) {
        views.add(
            ToldAndFound.of(both.get(SettingBasis.APPROVED), both.get(SettingBasis.FOUND))
                .inForce(channel.position().toString()));
      }
    }
    return views;
  }

  /** The newest of each basis; of two for one moment the one entered last. */
  private static Map<Long, Map<SettingBasis, ChannelSetting>> newest(
      DSLContext sql, Collection<Long> channels, Viewpoint viewpoint) {
    Result<ChannelSettingRecord> rows =
        sql.selectFrom(CHANNEL_SETTING)
            .where(CHANNEL_SETTING.CHANNEL_ID.in(channels))
            .and(RowByRow.of(CHANNEL_SETTING.VALID_FROM).le(Tx.moment(viewpoint.at())))
            .orderBy(CHANNEL_SETTING.VALID_FROM, CHANNEL_SETTING.ID)
            .fetch();
    Long entry = viewpoint.known();
    Set<Long> changes = new HashSet<>(rows.getValues(CHANNEL_SETTING.CHANGE_ID));
    Set<Long> known = entry == null ? changes : KnownTimeStore.known(sql, entry, changes);
    Map<Long, Map<SettingBasis, ChannelSetting>> newest = new HashMap<>();
    rows.stream()
        .filter(row -> known.contains(row.getChangeId()))
        .map(row -> Map.entry(row.getChannelId(), ChannelStore.setting(row)))
        .forEach(
            row ->
                newest
                    .computeIfAbsent(row.getKey(), fresh -> new EnumMap<>(SettingBasis.class))
                    .put(row.getValue().basis(), row.getValue()));
    return newest;
  }

  /** The points that feed a channel, in whatever role. */
  List<PointId> feeding(DSLContext sql, ChannelId channel) {
    return sql.select(POINT_CHANNEL.POINT_ID)
        .from(POINT_CHANNEL)
        .where(POINT_CHANNEL.CHANNEL_ID.eq(channel.number()))
        .fetch(row -> new PointId(row.value1()));
  }
}
