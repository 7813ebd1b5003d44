package loopwright.plant;

import static loopwright.db.gen.Tables.CHANNEL;
import static loopwright.db.gen.Tables.CHANNEL_SETTING;
import static loopwright.db.gen.Tables.POINT_CHANNEL;
import static loopwright.db.gen.Tables.VOTING_GROUP;
import static loopwright.db.gen.Tables.VOTING_MEMBER;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ChannelRecord;
import loopwright.db.gen.tables.records.ChannelSettingRecord;
import loopwright.db.gen.tables.records.PointChannelRecord;
import loopwright.db.gen.tables.records.VotingGroupRecord;
import loopwright.db.gen.tables.records.VotingMemberRecord;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;

/** Monitor channels, what they were told, what feeds them and how they vote. */
final class ChannelStore {

  Optional<Channel> at(DSLContext sql, SiteId site, Channel.Position position) {
    return sql.selectFrom(CHANNEL)
        .where(CHANNEL.SITE_ID.eq(site.number()))
        .and(CHANNEL.RACK.eq(position.rack()))
        .and(CHANNEL.SLOT_NO.eq((short) position.slot()))
        .and(CHANNEL.CHANNEL_NO.eq((short) position.channel()))
        .fetchOptional(ChannelStore::channel);
  }

  Optional<Channel> channel(DSLContext sql, ChannelId id) {
    return sql.selectFrom(CHANNEL)
        .where(CHANNEL.ID.eq(id.number()))
        .fetchOptional(ChannelStore::channel);
  }

  ChannelId insert(Tx tx, SiteId site, Channel.Position position) {
    ChannelRecord row = tx.row(CHANNEL);
    row.setSiteId(site.number());
    row.setRack(position.rack());
    row.setSlotNo((short) position.slot());
    row.setChannelNo((short) position.channel());
    return new ChannelId(tx.insert(row).getId());
  }

  List<PointChannel> ofPoint(DSLContext sql, PointId point) {
    return sql.select(CHANNEL.asterisk(), POINT_CHANNEL.ROLE)
        .from(POINT_CHANNEL)
        .join(CHANNEL)
        .on(CHANNEL.ID.eq(POINT_CHANNEL.CHANNEL_ID))
        .where(POINT_CHANNEL.POINT_ID.eq(point.number()))
        .orderBy(CHANNEL.RACK, CHANNEL.SLOT_NO, CHANNEL.CHANNEL_NO)
        .fetch()
        .map(row -> withSettings(sql, channel(row), row.get(POINT_CHANNEL.ROLE)));
  }

  private PointChannel withSettings(DSLContext sql, Channel channel, String role) {
    return new PointChannel(
        channel,
        ChannelRole.named(role).orElseThrow(),
        newest(sql, channel.id(), SettingBasis.APPROVED).orElse(null),
        newest(sql, channel.id(), SettingBasis.FOUND).orElse(null));
  }

  Optional<ChannelSetting> newest(DSLContext sql, ChannelId channel, SettingBasis basis) {
    return settings(sql, channel, basis, 1).stream().findFirst();
  }

  /** Newest first; of two for one moment the one entered last comes first. */
  List<ChannelSetting> settings(DSLContext sql, ChannelId channel, SettingBasis basis, int most) {
    return sql.selectFrom(CHANNEL_SETTING)
        .where(CHANNEL_SETTING.CHANNEL_ID.eq(channel.number()))
        .and(CHANNEL_SETTING.BASIS.eq(basis.word()))
        .orderBy(CHANNEL_SETTING.VALID_FROM.desc(), CHANNEL_SETTING.ID.desc())
        .limit(most)
        .fetch(ChannelStore::setting);
  }

  void insert(Tx tx, ChannelId channel, ChannelSetting setting) {
    ChannelSettingRecord row = tx.row(CHANNEL_SETTING);
    row.setChannelId(channel.number());
    row.setBasis(setting.basis().word());
    row.setValidFrom(Tx.moment(setting.from()));
    row.setScaleFactorReason(absent(setting.scaleReason()));
    row.setAuthority(absent(setting.authority()));
    row.setZeroVolts(setting.zeroVolts());
    row.setPositiveDirection(setting.positive() == null ? null : setting.positive().word());
    fillScale(row, setting.scaleFactor());
    fillLevels(row, setting);
    tx.insert(row);
  }

  private static void fillScale(ChannelSettingRecord row, @Nullable ScaleFactor scale) {
    row.setScaleFactor(scale == null ? null : scale.declared());
    row.setScaleFactorUnit(scale == null ? null : scale.unit().symbol());
  }

  private static void fillLevels(ChannelSettingRecord row, ChannelSetting setting) {
    row.setFullScaleLow(setting.fullScale().low());
    row.setFullScaleHigh(setting.fullScale().high());
    row.setAlertLow(setting.alert().low());
    row.setAlertHigh(setting.alert().high());
    row.setDangerLow(setting.danger().low());
    row.setDangerHigh(setting.danger().high());
    row.setLevelUnit(setting.levelUnit() == null ? null : setting.levelUnit().symbol());
    row.setAlertDelayS(setting.delays().alertSeconds());
    row.setDangerDelayS(setting.delays().dangerSeconds());
    row.setOkLowVolts(setting.okVolts().low());
    row.setOkHighVolts(setting.okVolts().high());
  }

  boolean isLinked(DSLContext sql, PointId point, ChannelId channel) {
    return sql.fetchExists(
        POINT_CHANNEL,
        POINT_CHANNEL
            .POINT_ID
            .eq(point.number())
            .and(POINT_CHANNEL.CHANNEL_ID.eq(channel.number())));
  }

  void link(Tx tx, PointId point, ChannelId channel, ChannelRole role) {
    PointChannelRecord row = tx.row(POINT_CHANNEL);
    row.setPointId(point.number());
    row.setChannelId(channel.number());
    row.setRole(role.word());
    tx.insert(row);
  }

  long insertGroup(Tx tx, SiteId site, String name, String logic) {
    VotingGroupRecord row = tx.row(VOTING_GROUP);
    row.setSiteId(site.number());
    row.setName(name);
    row.setLogic(logic);
    return tx.insert(row).getId();
  }

  void addMember(Tx tx, long group, ChannelId channel) {
    VotingMemberRecord row = tx.row(VOTING_MEMBER);
    row.setVotingGroupId(group);
    row.setChannelId(channel.number());
    tx.insert(row);
  }

  boolean hasGroup(DSLContext sql, SiteId site, String name) {
    return sql.fetchExists(
        VOTING_GROUP, VOTING_GROUP.SITE_ID.eq(site.number()).and(VOTING_GROUP.NAME.eq(name)));
  }

  /** The groups in which a channel votes. */
  List<VotingGroup> groupsOf(DSLContext sql, ChannelId channel) {
    return sql.select(VOTING_GROUP.asterisk())
        .from(VOTING_GROUP)
        .join(VOTING_MEMBER)
        .on(VOTING_MEMBER.VOTING_GROUP_ID.eq(VOTING_GROUP.ID))
        .where(VOTING_MEMBER.CHANNEL_ID.eq(channel.number()))
        .orderBy(VOTING_GROUP.NAME)
        .fetch()
        .map(row -> group(sql, row));
  }

  private VotingGroup group(DSLContext sql, Record row) {
    long id = row.get(VOTING_GROUP.ID);
    List<Channel> members =
        sql.select(CHANNEL.asterisk())
            .from(CHANNEL)
            .join(VOTING_MEMBER)
            .on(VOTING_MEMBER.CHANNEL_ID.eq(CHANNEL.ID))
            .where(VOTING_MEMBER.VOTING_GROUP_ID.eq(id))
            .orderBy(CHANNEL.RACK, CHANNEL.SLOT_NO, CHANNEL.CHANNEL_NO)
            .fetch(ChannelStore::channel);
    return new VotingGroup(
        id,
        new SiteId(row.get(VOTING_GROUP.SITE_ID)),
        row.get(VOTING_GROUP.NAME),
        row.get(VOTING_GROUP.LOGIC),
        members);
  }

  static Channel channel(Record row) {
    return new Channel(
        new ChannelId(row.get(CHANNEL.ID)),
        new SiteId(row.get(CHANNEL.SITE_ID)),
        new Channel.Position(
            row.get(CHANNEL.RACK), row.get(CHANNEL.SLOT_NO), row.get(CHANNEL.CHANNEL_NO)),
        row.get(CHANNEL.VERSION));
  }

  static ChannelSetting setting(ChannelSettingRecord row) {
    return new ChannelSetting(
        SettingBasis.named(row.getBasis()).orElseThrow(),
        row.getValidFrom().toInstant(),
        scale(row.getScaleFactor(), row.getScaleFactorUnit()),
        present(row.getScaleFactorReason()),
        new Limits(row.getFullScaleLow(), row.getFullScaleHigh()),
        new Limits(row.getAlertLow(), row.getAlertHigh()),
        new Limits(row.getDangerLow(), row.getDangerHigh()),
        row.getLevelUnit() == null ? null : Unit.named(row.getLevelUnit()).orElseThrow(),
        new ChannelSetting.Delays(row.getAlertDelayS(), row.getDangerDelayS()),
        new Limits(row.getOkLowVolts(), row.getOkHighVolts()),
        row.getZeroVolts(),
        row.getPositiveDirection() == null
            ? null
            : Direction.named(row.getPositiveDirection()).orElseThrow(),
        present(row.getAuthority()));
  }

  private static @Nullable ScaleFactor scale(@Nullable BigDecimal declared, @Nullable String unit) {
    return declared == null || unit == null
        ? null
        : new ScaleFactor(declared, Unit.named(unit).orElseThrow());
  }

  private static @Nullable String absent(String text) {
    return text.isEmpty() ? null : text;
  }

  private static String present(@Nullable String text) {
    return text == null ? "" : text;
  }
}
