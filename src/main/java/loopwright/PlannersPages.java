package loopwright;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import loopwright.bypass.BypassPages;
import loopwright.bypass.Bypasses;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.closeout.CloseOutPages;
import loopwright.closeout.CloseOuts;
import loopwright.closeout.FoundOutOfTolerance;
import loopwright.db.Database;
import loopwright.exposure.Effects;
import loopwright.exposure.Meanwhile;
import loopwright.field.FieldPages;
import loopwright.fieldcheck.GapReadings;
import loopwright.kit.Kits;
import loopwright.label.LabelBase;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.loop.Proposed;
import loopwright.loop.Standings;
import loopwright.mounting.Mountings;
import loopwright.outage.CalendarPages;
import loopwright.outage.DuePages;
import loopwright.outage.OutagePages;
import loopwright.outage.Outages;
import loopwright.outage.ScopePages;
import loopwright.outage.SuggestionSource;
import loopwright.outage.Suggestions;
import loopwright.pack.EmergentPages;
import loopwright.pack.FieldReturns;
import loopwright.pack.PackPages;
import loopwright.pack.Packs;
import loopwright.pack.PutAside;
import loopwright.pack.ReturnPages;
import loopwright.pack.Returns;
import loopwright.pack.SheetWriter;
import loopwright.people.People;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.register.FamilyBook;
import loopwright.register.Register;
import loopwright.remedy.Remedies;
import loopwright.spare.AllocationPages;
import loopwright.spare.KitSparePages;
import loopwright.spare.SparePages;
import loopwright.spare.Spares;
import loopwright.spare.WishPages;
import loopwright.standard.Standards;
import loopwright.temporary.TemporaryFits;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** The planner's half put together: outages, packs, what comes back, bypass log, close-out. */
final class PlannersPages implements Pages, Need.Source {
  private final List<Pages> all;
  private final BypassPages bypassPages;

  private PlannersPages(List<Pages> all, BypassPages bypassPages) {
    this.all = List.copyOf(all);
    this.bypassPages = bypassPages;
  }

  /** What it is made of. */
  record Needed(
      Database database,
      Page page,
      Plant plant,
      Channels channels,
      Judging judging,
      Configuration configuration,
      Calibrations calibrations,
      RegisteredProfiles judgedBy,
      Proposed proposed,
      GapReadings gapReadings,
      Standards standards,
      Effects effects,
      Mountings mountings,
      People people,
      Register register,
      Kits kits,
      FamilyBook families,
      Standings standings,
      Remedies remedies,
      LabelBase base,
      InstantSource clock,
      Supplier<UUID> identity,
      TemporaryFits temporaryFits,
      List<SuggestionSource> suggested) {}

  static PlannersPages of(Needed with) {
    Database database = with.database();
    Page page = with.page();
    InstantSource clock = with.clock();
    Outages outages = new Outages(with.plant());
    Suggestions suggestions = new Suggestions(with.judging(), with.suggested(), clock);
    Spares spares =
        new Spares(
            outages, with.proposed(), with.judging(), with.register(), with.standings(), clock);
    SparePages sparePages = new SparePages(database, page, spares, with.remedies());
    Packs packs = new Packs(outages, facts(with, spares));
    PackPages packPages = new PackPages(database, page, packs, with.base(), with.identity());
    Bypasses bypasses = new Bypasses(clock);
    Returns returns = new Returns(packs, with.judgedBy(), records(with, bypasses));
    ReturnPages returnPages = new ReturnPages(database, page, returns);
    FieldPages fieldPages =
        new FieldPages(database, page, new FieldReturns(packs, returns), with.people(), clock);
    BypassPages bypassPages =
        new BypassPages(database, page, with.plant(), outages, bypasses, clock);
    CloseOutPages closeOutPages =
        new CloseOutPages(
            database,
            page,
            new CloseOuts(
                outages,
                packs,
                with.judging(),
                with.configuration(),
                bypasses,
                new FoundOutOfTolerance(with.calibrations(), new Meanwhile(with.effects())),
                with.temporaryFits(),
                List.of(spares),
                clock),
            clock);
    return new PlannersPages(
        List.of(
            new OutagePages(
                database,
                page,
                with.plant(),
                outages,
                List.of(
                    packPages, fieldPages, sparePages, returnPages, bypassPages, closeOutPages)),
            new ScopePages(database, page, outages, suggestions, clock),
            new DuePages(database, with.plant(), suggestions, clock),
            new CalendarPages(
                database,
                page,
                outages,
                with.people(),
                List.of(with.temporaryFits()),
                clock,
                with.identity()),
            packPages,
            fieldPages,
            new EmergentPages(database, page, packs, clock),
            sparePages,
            new WishPages(database, page, spares, sparePages),
            new KitSparePages(database, page, spares, with.kits(), sparePages),
            new AllocationPages(database, page, spares, dealingFacts(with)),
            returnPages,
            bypassPages,
            closeOutPages),
        bypassPages);
  }

  private static AllocationPages.Facts dealingFacts(Needed with) {
    return new AllocationPages.Facts(
        with.register(),
        with.families(),
        with.channels(),
        with.remedies(),
        with.judging(),
        with.clock());
  }

  private static SheetWriter.Facts facts(Needed with, PutAside putAside) {
    return new SheetWriter.Facts(
        with.plant(),
        with.channels(),
        with.judging(),
        with.calibrations(),
        with.judgedBy(),
        putAside,
        with.mountings(),
        with.standards(),
        with.clock());
  }

  private static Returns.Records records(Needed with, Bypasses bypasses) {
    return new Returns.Records(
        with.proposed(),
        with.judging(),
        with.configuration(),
        with.calibrations(),
        with.gapReadings(),
        with.standards(),
        bypasses,
        with.clock(),
        with.identity());
  }

  /** What a loop's page shows of it. */
  LoopPanel panel() {
    return bypassPages;
  }

  @Override
  public void mount(Routes routes) {
    all.forEach(pages -> pages.mount(routes));
  }

  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return all.stream()
        .filter(Need.Source.class::isInstance)
        .map(Need.Source.class::cast)
        .flatMap(source -> source.needs(sql, now).stream())
        .toList();
  }
}
