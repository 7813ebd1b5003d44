package loopwright.field;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loopwright.calibration.Zero;
import loopwright.curve.Grid;
import loopwright.curve.ToleranceProfile;
import loopwright.outage.Outage;
import loopwright.outage.Work;
import loopwright.pack.FieldReturns;
import loopwright.pack.Returned;
import loopwright.time.SiteMoment;
import loopwright.web.PathSegment;
import org.jspecify.annotations.Nullable;

/**
 * Everything of a pack that a device keeps, as the document it is sent as.
 *
 * @param register which register, so that packs of two never mix
 * @param asOf by our clock; sent back with every entry
 * @param zeros where gap zero can be taken
 * @param bypassCells in which a bypass is told
 * @param asLeftWork the kind of work that asks for an as-left curve
 * @param entries what the pack's devices sent, newest first
 */
record PackState(
    String register,
    String pack,
    String name,
    String site,
    String zone,
    boolean closed,
    int revision,
    String identity,
    String issued,
    String asOf,
    String takeAlong,
    Holder device,
    List<String> cautions,
    List<String> zeros,
    String asLeftWork,
    List<FieldReturns.Cell> bypassCells,
    List<LoopState> loops,
    List<EntryState> entries) {

  /** The device itself. */
  record Holder(String label, String person, String expires) {}

  /**
   * One loop.
   *
   * @param sheet as frozen; null for a device that has it
   * @param hash of the sheet
   * @param profile null when none is known, and for a device that has it
   * @param back what came back of it last; null if nothing did
   */
  record LoopState(
      String tag,
      @Nullable JsonNode sheet,
      String hash,
      @Nullable Limits profile,
      @Nullable Back back,
      String page,
      String bypass) {
    /** Without what never changes as long as the pack's identity is the same. */
    LoopState lean() {
      return new LoopState(tag, null, hash, null, back, page, bypass);
    }
  }

  record Back(String outcome, String who, String at, String told) {}

  /**
   * What a curve is judged by, in µm and mV/µm.
   *
   * @param targets of the grid that the sheet asks for, µm
   */
  record Limits(
      double slope,
      double isfLowest,
      double isfHighest,
      double dslLimit,
      String shiftRule,
      List<GridNumbers> grids,
      List<Double> targets) {}

  /** One grid of a profile, µm. */
  record GridNumbers(String unit, double from, double to, double step) {}

  record EntryState(String uuid, String tag, String state, List<String> told, String at) {}

  /** The same for a device that holds the sheets of this very revision. */
  PackState lean() {
    return new PackState(
        register,
        pack,
        name,
        site,
        zone,
        closed,
        revision,
        identity,
        issued,
        asOf,
        takeAlong,
        device,
        cautions,
        zeros,
        asLeftWork,
        bypassCells,
        loops.stream().map(LoopState::lean).toList(),
        entries);
  }

  static PackState of(
      Outage outage,
      FieldReturns.TakenAlong pack,
      Device device,
      List<Entry> entries,
      Instant now) {
    return new PackState(
        pack.identity().substring(0, "WP-00000000".length()),
        outage.number(),
        outage.name(),
        outage.siteName(),
        outage.zone().getId(),
        outage.isClosed(),
        pack.revision(),
        pack.identity(),
        SiteMoment.shown(pack.issuedAt(), outage.zone()) + " by " + pack.issuedBy(),
        now.toString(),
        outage.href() + "/take-along",
        new Holder(
            device.label(),
            device.personName(),
            SiteMoment.shown(device.expiresAt(), outage.zone())),
        pack.cautions(),
        Stream.of(Zero.values()).map(Zero::word).toList(),
        Work.AS_LEFT.label(),
        FieldReturns.bypassCells(),
        pack.loops().stream().map(loop -> loop(outage, pack, loop)).toList(),
        entries.stream().map(entry -> entry(outage, entry)).toList());
  }

  private static LoopState loop(
      Outage outage, FieldReturns.TakenAlong pack, FieldReturns.Loop loop) {
    Returned last = pack.last().get(loop.point());
    return new LoopState(
        loop.tag(),
        loop.sheet(),
        loop.hash(),
        loop.profile().map(PackState::limits).orElse(null),
        last == null
            ? null
            : new Back(
                last.outcome(),
                last.who(),
                SiteMoment.shown(last.at(), outage.zone()),
                last.told()),
        "/loops/" + PathSegment.of(loop.tag()),
        "/bypasses/new?loop=" + PathSegment.of(loop.tag()));
  }

  static Limits limits(ToleranceProfile profile) {
    Grid asked = profile.grids().get(0);
    return new Limits(
        profile.slope(),
        profile.isfLowest(),
        profile.isfHighest(),
        profile.dslLimitMicrometres(),
        profile.shiftRule().label(),
        profile.grids().stream().map(PackState::grid).toList(),
        asked.positions().stream().map(gap -> micrometres(asked, gap)).toList());
  }

  private static double micrometres(Grid grid, BigDecimal gap) {
    return grid.unit().toCanonical(gap).doubleValue();
  }

  private static GridNumbers grid(Grid grid) {
    return new GridNumbers(
        grid.unit().symbol(), grid.fromMicrometres(), grid.toMicrometres(), grid.stepMicrometres());
  }

  static EntryState entry(Outage outage, Entry entry) {
    List<String> told = new ArrayList<>(entry.told().lines().toList());
    Entry.Decision decision = entry.decision();
    if (decision != null) {
      told.add(
          (decision.recorded() ? "Recorded" : "Set aside")
              + " by "
              + decision.who()
              + ": "
              + decision.reason());
      decision.told().lines().forEach(told::add);
    }
    return new EntryState(
        entry.uuid(),
        entry.tag(),
        entry.state(),
        told,
        entry.number() + ", " + SiteMoment.shown(entry.at(), outage.zone()));
  }
}
