package loopwright.importing;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Channels;
import loopwright.plant.PointChannel;
import loopwright.plant.PointId;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteId;
import loopwright.plant.VotingGroup;
import org.jspecify.annotations.Nullable;

/**
 * The monitor side of a points file: channels, their approved settings, which points feed them and
 * how they vote. Two rows that feed one channel have to say the same of it.
 */
final class ChannelRows {
  private static final String POSITION = "rack";
  private static final List<String> POSITION_CELLS = List.of("rack", "rack_slot", "rack_channel");

  private final Planning planning;
  private final Channels channels;
  private final Map<Long, Said> settings = new HashMap<>();
  private final List<PhaseLink> phaseLinks = new ArrayList<>();
  private final Map<World.Key, Group> groups = new LinkedHashMap<>();

  ChannelRows(Planning planning) {
    this.planning = planning;
    this.channels = planning.features.channels();
  }

  /** The channel that a row names and what it says of it. */
  record Wiring(
      World.Key siteKey,
      long site,
      Channel.Position position,
      SettingCells cells,
      String phaseReference,
      String group,
      String logic) {}

  /** The setting that a channel will have, and the row that said so. */
  private record Said(@Nullable ChannelSetting setting, RowPlace by) {}

  private record PhaseLink(RowCells row, String tag, long channel) {}

  private record Group(long site, String name, String logic, RowPlace by, Set<Long> channels) {}

  /** Reads the cells; empty when the row names no channel or can't be read. */
  Optional<Wiring> read(RowCells row, Optional<PlantCells.Where> where, ZoneId zone) {
    SettingCells cells = SettingCells.read(row, zone, planning.now);
    String rack = row.name("rack");
    Optional<Integer> slot = row.whole("rack_slot");
    Optional<Integer> channel = row.whole("rack_channel");
    String phase = row.name("phase_reference");
    String group = row.text("voting_group");
    String logic = row.text("voting_logic");
    row.attempt("alert_low", () -> cells.over(null, cells.from().orElse(planning.now)));
    boolean none = !row.anyFilled(POSITION_CELLS);
    if (none) {
      refuseUnwired(row);
      return Optional.empty();
    }
    for (String heading : POSITION_CELLS) {
      if (!row.isFilled(heading)) {
        row.complain(
            heading, ImportProblem.EMPTY_CELL, "rack, slot and channel together, or none of them");
      }
    }
    if (!group.isEmpty() && !logic.matches("[1-9]oo[1-9]")) {
      row.complain(
          "voting_logic",
          ImportProblem.UNKNOWN_WORD,
          Shown.cell(logic),
          "2oo2",
          "It reads like 2oo3: two out of three.");
    }
    if (rack.isEmpty() || slot.isEmpty() || channel.isEmpty() || where.isEmpty()) {
      return Optional.empty();
    }
    return row.attempt(POSITION, () -> new Channel.Position(rack, slot.get(), channel.get()))
        .map(
            position ->
                new Wiring(
                    where.get().siteKey(),
                    where.get().site(),
                    position,
                    cells,
                    phase,
                    group,
                    logic));
  }

  private static void refuseUnwired(RowCells row) {
    List<String> needing = new ArrayList<>(SettingCells.HEADINGS);
    needing.addAll(List.of("phase_reference", "voting_group"));
    needing.stream()
        .filter(row::isFilled)
        .findFirst()
        .ifPresent(
            heading ->
                row.complain(
                    POSITION,
                    ImportProblem.EMPTY_CELL,
                    "the channel that " + heading + " is for, or leave that empty too"));
  }

  /**
   * Plans the channel, its setting and the tie to the point.
   *
   * @param recorded the point, when it is in the register already
   * @return what would change, for a recorded point
   */
  List<FieldChange> wire(RowCells row, long point, Optional<PointId> recorded, Wiring wiring) {
    List<FieldChange> changes = new ArrayList<>();
    long channel = channel(row, wiring);
    List<PointChannel> ties =
        recorded.map(id -> channels.ofPoint(planning.sql, id)).orElse(List.of());
    boolean tied = ties.stream().anyMatch(tie -> tie.channel().id().number() == channel);
    if (!tied) {
      changes.add(new FieldChange("channel", "", wiring.position().toString()));
      planning.steps.add(
          (tx, ids) ->
              channels.link(
                  tx,
                  new PointId(ids.real(point)),
                  new ChannelId(ids.real(channel)),
                  ChannelRole.MEASURES));
    }
    changes.addAll(setting(row, channel, wiring));
    if (!wiring.phaseReference().isEmpty()) {
      phaseLinks.add(new PhaseLink(row, wiring.phaseReference(), channel));
    }
    if (!wiring.group().isEmpty()) {
      vote(row, channel, wiring);
    }
    return changes;
  }

  private long channel(RowCells row, Wiring wiring) {
    World.Key key =
        World.Key.of(
            World.Thing.CHANNEL,
            wiring.siteKey().name(),
            wiring.position().rack(),
            wiring.position().slot() + "." + wiring.position().channel());
    Optional<World.Entry> entry = planning.world.find(key);
    if (entry.isPresent()) {
      return entry.get().number();
    }
    Optional<Channel> known =
        wiring.site() < 0
            ? Optional.empty()
            : channels.at(planning.sql, new SiteId(wiring.site()), wiring.position());
    if (known.isPresent()) {
      planning.world.recorded(key, known.get().id().number());
      return known.get().id().number();
    }
    long planned = planning.world.plan(key, row.place());
    planning.steps.add(
        (tx, ids) -> {
          SiteId site = new SiteId(ids.real(wiring.site()));
          ids.made(planned, channels.add(tx, site, wiring.position()).number());
        });
    return planned;
  }

  private List<FieldChange> setting(RowCells row, long channel, Wiring wiring) {
    Said before = settings.get(channel);
    ChannelSetting was = before == null ? recordedSetting(channel) : before.setting();
    Instant from = laterThan(was, wiring.cells().from());
    Optional<ChannelSetting> said = row.attempt("alert_low", () -> wiring.cells().over(was, from));
    if (said.isEmpty() || !row.anyFilled(SettingCells.HEADINGS)) {
      return List.of();
    }
    List<FieldChange> changes =
        FieldChange.between(was == null ? Map.of() : PointText.of(was), PointText.of(said.get()));
    if (changes.isEmpty()) {
      return List.of();
    }
    if (before != null) {
      FieldChange first = changes.get(0);
      row.complain(
          POSITION,
          ImportProblem.DISAGREES,
          first.field() + " " + first.after(),
          first.field() + " " + first.before(),
          before.by());
      return List.of();
    }
    settings.put(channel, new Said(said.get(), row.place()));
    boolean dated = wiring.cells().from().filter(from::equals).isPresent();
    planning.steps.add(
        (tx, ids) ->
            channels.set(
                tx,
                new ChannelId(ids.real(channel)),
                dated ? said.get() : wiring.cells().over(was, tx.at())));
    return changes;
  }

  private @Nullable ChannelSetting recordedSetting(long channel) {
    return channel < 0
        ? null
        : channels.settings(planning.sql, new ChannelId(channel), SettingBasis.APPROVED).stream()
            .findFirst()
            .orElse(null);
  }

  /** A date that isn't later than what is recorded would change history; then it holds from now. */
  private Instant laterThan(@Nullable ChannelSetting was, Optional<Instant> said) {
    return said.filter(at -> was == null || at.isAfter(was.from())).orElse(planning.now);
  }

  private void vote(RowCells row, long channel, Wiring wiring) {
    World.Key key = World.Key.of(World.Thing.GROUP, wiring.siteKey().name(), wiring.group());
    Group group =
        groups.computeIfAbsent(
            key,
            k ->
                new Group(
                    wiring.site(),
                    wiring.group(),
                    wiring.logic(),
                    row.place(),
                    new LinkedHashSet<>()));
    if (!group.logic().equals(wiring.logic())) {
      row.complain(
          "voting_logic", ImportProblem.DISAGREES, wiring.logic(), group.logic(), group.by());
    }
    group.channels().add(channel);
  }

  /** Ties what needs all rows read: phase references and voting groups. */
  void tie() {
    phaseLinks.forEach(this::tie);
    groups.values().forEach(this::tie);
  }

  private void tie(PhaseLink link) {
    Optional<Tags.Tagged> phase = planning.tags.named(link.row(), "phase_reference");
    if (phase.isEmpty()) {
      planning.refuse(link.row().place());
      return;
    }
    long point = phase.get().number();
    boolean tied =
        point > 0
            && channels.ofPoint(planning.sql, new PointId(point)).stream()
                .anyMatch(tie -> tie.channel().id().number() == link.channel());
    if (!tied) {
      planning.changes(
          link.row().place(), new FieldChange("phase reference", "", phase.get().tag()));
      planning.steps.add(
          (tx, ids) ->
              channels.link(
                  tx,
                  new PointId(ids.real(point)),
                  new ChannelId(ids.real(link.channel())),
                  ChannelRole.PHASE_REFERENCE_FOR));
    }
  }

  private void tie(Group group) {
    Optional<VotingGroup> known = known(group);
    if (known.isEmpty()) {
      planning.steps.add(
          (tx, ids) -> {
            List<ChannelId> members =
                group.channels().stream().map(c -> new ChannelId(ids.real(c))).toList();
            channels.addGroup(
                tx, new SiteId(ids.real(group.site())), group.name(), group.logic(), members);
          });
      return;
    }
    Set<Long> members =
        known.get().members().stream().map(m -> m.id().number()).collect(Collectors.toSet());
    if (!members.containsAll(group.channels()) || !known.get().logic().equals(group.logic())) {
      planning.refuse(
          group.by(),
          "voting_group",
          ImportProblem.FIXED,
          group.name() + " " + group.logic(),
          known.get().name() + " " + known.get().logic() + " with " + members.size() + " channels",
          "leave the group out of the file, or change it on its page.");
    }
  }

  private Optional<VotingGroup> known(Group group) {
    return group.channels().stream()
        .filter(channel -> channel > 0)
        .flatMap(channel -> channels.groupsOf(planning.sql, new ChannelId(channel)).stream())
        .filter(known -> known.name().equalsIgnoreCase(group.name()))
        .findFirst();
  }
}
