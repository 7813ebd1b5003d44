package loopwright;

import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import loopwright.alloy.AlloyBook;
import loopwright.alloy.AlloyPages;
import loopwright.attachment.AttachmentPages;
import loopwright.attachment.Attachments;
import loopwright.attachment.Owner;
import loopwright.attachment.OwnerKind;
import loopwright.calibration.CalibrationData;
import loopwright.calibration.CalibrationPages;
import loopwright.calibration.Calibrations;
import loopwright.calibration.CalibrationsOfPart;
import loopwright.calibration.CurvePages;
import loopwright.calibration.Evidence;
import loopwright.calibration.RegisteredProfiles;
import loopwright.calibration.UsesOfStandard;
import loopwright.certificate.CertificatePages;
import loopwright.circuit.BarrierOfPart;
import loopwright.circuit.CircuitPages;
import loopwright.circuit.Circuits;
import loopwright.concession.ConcessionPages;
import loopwright.concession.Concessions;
import loopwright.datasheet.DataSheets;
import loopwright.datasheet.SheetOfPart;
import loopwright.datasheet.SheetPages;
import loopwright.datasheet.SheetsOfFamily;
import loopwright.datasheet.Subject;
import loopwright.db.Database;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.db.Tx;
import loopwright.demo.DemoEquipment;
import loopwright.demo.DemoPlant;
import loopwright.demo.DemoSheets;
import loopwright.drift.DriftPages;
import loopwright.exchange.Proposal;
import loopwright.exposure.EffectPanels;
import loopwright.exposure.Effects;
import loopwright.exposure.ImpactPages;
import loopwright.exposure.ImpactReviews;
import loopwright.family.FamilyEditPages;
import loopwright.family.FamilyVersions;
import loopwright.family.VersionsOfFamily;
import loopwright.fieldcheck.CheckPages;
import loopwright.fieldcheck.FieldChecks;
import loopwright.fieldcheck.GapReadings;
import loopwright.gapround.GapRounds;
import loopwright.gapround.RoundPages;
import loopwright.importing.Features;
import loopwright.importing.ImportPages;
import loopwright.importing.Importing;
import loopwright.journal.JournalPages;
import loopwright.journal.JournalStore;
import loopwright.label.LabelBase;
import loopwright.label.LabelOfPart;
import loopwright.label.LabelPages;
import loopwright.label.LabelsOfLoop;
import loopwright.lengthlaw.LawPages;
import loopwright.lengthlaw.LengthLaws;
import loopwright.loop.ChangePages;
import loopwright.loop.Configuration;
import loopwright.loop.CorrectionPages;
import loopwright.loop.Corrections;
import loopwright.loop.Disputes;
import loopwright.loop.DueLoops;
import loopwright.loop.Judging;
import loopwright.loop.LoopData;
import loopwright.loop.LoopPages;
import loopwright.loop.LoopsOffBalance;
import loopwright.loop.Need;
import loopwright.loop.NeedsPages;
import loopwright.loop.PlantPages;
import loopwright.loop.Proposed;
import loopwright.loop.RegisteredParts;
import loopwright.loop.Standings;
import loopwright.matching.PartKind;
import loopwright.matching.rules.StandardRules;
import loopwright.past.DifferencePages;
import loopwright.people.People;
import loopwright.people.PeoplePages;
import loopwright.plant.Channels;
import loopwright.plant.PlacesAsJudged;
import loopwright.plant.Plant;
import loopwright.plant.PlantEditPages;
import loopwright.plant.PointId;
import loopwright.reach.ReachPages;
import loopwright.register.ComponentId;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyId;
import loopwright.register.FittedParts;
import loopwright.register.PartSearch;
import loopwright.register.PartsAsJudged;
import loopwright.register.Register;
import loopwright.register.RegisterPages;
import loopwright.register.ToleranceProfiles;
import loopwright.register.Whereabouts;
import loopwright.remedy.ExchangePages;
import loopwright.remedy.Remedies;
import loopwright.scan.ScanPages;
import loopwright.scan.ScanTools;
import loopwright.search.FindPages;
import loopwright.signing.AuthorisationPages;
import loopwright.signing.Signing;
import loopwright.signing.SigningPages;
import loopwright.spare.Spares;
import loopwright.standard.StandardPages;
import loopwright.standard.Standards;
import loopwright.stock.StockPages;
import loopwright.symptom.CausePages;
import loopwright.symptom.LoopsOnRecord;
import loopwright.web.NavItem;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import loopwright.whatif.WhatIfPages;
import org.jspecify.annotations.Nullable;

/** The composition root: every object that lives as long as the program is made here. */
public final class App implements AutoCloseable {
  private static final List<NavItem> NAV =
      List.of(
          new NavItem("/", "Needs somebody", "needs"),
          new NavItem("/plant", "Plant", "plant"),
          new NavItem("/parts", "Parts", "parts"),
          new NavItem("/scan", "Scan check", "scan"),
          new NavItem("/calibrations", "Calibrations", "calibrations"),
          new NavItem("/cause", "Causes", "cause"),
          new NavItem("/exchanges", "Exchanges", "exchanges"),
          new NavItem("/stock", "Stock", "stock"),
          // from here on behind "More"; see web.Nav
          new NavItem("/outages", "Outages", "outages"),
          new NavItem("/concessions", "Concessions", "concessions"),
          new NavItem("/standards", "Standards", "standards"),
          new NavItem("/families", "Families", "families"),
          new NavItem("/profiles", "Profiles", "profiles"),
          new NavItem("/import", "Import", "import", Permission.PLAN),
          new NavItem("/record", "Record", "record"),
          new NavItem("/people", "People", "people", Permission.ADMINISTER));

  private final Database database;
  private final InstantSource clock;
  private final Plant plant = new Plant(this::pointChanged);
  private final Channels channels = new Channels(this::pointChanged);
  private final FamilyBook families = new FamilyBook(this::familyChanged);
  private final FamilyVersions familyVersions = new FamilyVersions();
  private final DataSheets sheets = new DataSheets(this::sheetChanged);
  private final AlloyBook alloys = new AlloyBook(this::alloysChanged);
  private final Circuits circuits = new Circuits(this::pointChanged);
  private final FittedParts fitted = new FittedParts();
  private final ToleranceProfiles profiles = new ToleranceProfiles();
  private final PartSearch search = new PartSearch();
  private final Register register = new Register(this::factsChanged);
  private final People people;
  private final RegisteredParts parts;
  private final Concessions concessions;
  private final Judging judging;
  private final Standings standings;
  private final Configuration configuration;
  private final ImpactReviews impacts = new ImpactReviews();
  private final Calibrations calibrations;
  private final Standards standards = new Standards();
  private final Signing signing;
  private final Importing importing;
  private final Remedies remedies;
  private final LengthLaws laws = new LengthLaws(families);
  private final GapRounds gapRounds;
  private final GapReadings gapReadings;
  private final FieldChecks fieldChecks;

  private App(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
    this.people = new People(database);
    this.parts = new RegisteredParts(new PartsAsJudged(sheets), register, search);
    this.concessions = new Concessions(clock);
    this.judging =
        new Judging(
            new Judging.Sources(
                parts,
                new PlacesAsJudged()::places,
                circuits,
                alloys::asJudged,
                Calibrations.asLeftFacts(),
                concessions,
                Spares.promises()),
            StandardRules.book());
    this.standings = new Standings(judging, clock);
    this.configuration = new Configuration(parts, judging, standings, clock);
    this.calibrations = new Calibrations(configuration, standings, impacts, clock);
    this.signing = new Signing(calibrations, standards);
    Features taken =
        new Features(families, profiles, register, plant, channels, configuration, calibrations);
    this.importing = new Importing(database, taken, clock);
    this.gapReadings = new GapReadings(clock);
    this.fieldChecks = new FieldChecks(judging, channels, calibrations, clock);
    this.gapRounds = new GapRounds(database, plant, gapReadings, clock);
    this.remedies = new Remedies(new LoopsOffBalance(judging, clock), families, plant);
  }

  /**
   * Opens the database of a folder; a new one gets its purpose and the profiles that come with the
   * program.
   */
  public static App open(Place place, Installation.Purpose purpose, InstantSource clock) {
    return claimed(Database.open(place, new JournalStore(), clock), purpose, clock);
  }

  private static App claimed(Database database, Installation.Purpose purpose, InstantSource clock) {
    try {
      Installation.claim(database, purpose, clock);
      App app = new App(database, clock);
      app.profiles.seed(database);
      return app;
    } catch (RuntimeException refused) {
      database.close();
      throw refused;
    }
  }

  /** Opens what is there, whatever it is for; a new database becomes a site's. */
  public static App open(Place place, InstantSource clock) {
    return claimed(Database.open(place, new JournalStore(), clock), clock);
  }

  private static App claimed(Database database, InstantSource clock) {
    Installation.Purpose purpose =
        Installation.of(database).map(Installation::purpose).orElse(Installation.Purpose.SITE);
    return claimed(database, purpose, clock);
  }

  /**
   * Opens the database of a folder, which must be there.
   *
   * @throws loopwright.problem.Refused if it isn't, or can't be read
   */
  public static App openExisting(Place.Folder place, InstantSource clock) {
    return claimed(Database.openExisting(place, new JournalStore(), clock), clock);
  }

  /** Serves the pages. Close the result before this. */
  public Web serve(WebSettings settings, String site) {
    return serve(settings, site, LabelBase.NOT_GIVEN);
  }

  /**
   * Serves the pages.
   *
   * @param base where labels lead to
   */
  public Web serve(WebSettings settings, String site, LabelBase base) {
    Page page = new Page(site, NAV);
    return Web.start(settings, page, people, clock, pages(page, base));
  }

  /** The first page asks every feature that has something which needs somebody. */
  private List<Pages> pages(Page page, LabelBase base) {
    List<Pages> all = new ArrayList<>(featurePages(page, base));
    List<Need.Source> needing =
        all.stream().filter(Need.Source.class::isInstance).map(Need.Source.class::cast).toList();
    all.add(new NeedsPages(database, page, standings, needing, clock));
    return all;
  }

  private List<Pages> featurePages(Page page, LabelBase base) {
    RegisteredProfiles judgedBy = new RegisteredProfiles(profiles, register, families, plant);
    Effects worked = new Effects(plant, channels, calibrations, judgedBy);
    EffectPanels effects = new EffectPanels(worked);
    ImpactPages impactPages = new ImpactPages(database, page, plant, calibrations, worked, impacts);
    SigningPages signingPages =
        new SigningPages(database, page, plant, calibrations, profiles, signing, people, clock);
    Evidence.Book evidence = new Evidence.Book(calibrations, profiles, standards);
    CertificatePages certificatePages =
        new CertificatePages(
            database, plant, register, calibrations, evidence, signing, base, clock);
    CalibrationPages calibrationPages =
        new CalibrationPages(
            database,
            page,
            plant,
            register,
            judgedBy,
            calibrations,
            standards,
            List.of(effects, impactPages, signingPages, certificatePages));
    StandardPages standardPages =
        new StandardPages(
            database,
            page,
            standards,
            new UsesOfStandard(calibrations, standards),
            this::clockShown,
            clock);
    Proposed proposed = new Proposed(parts, judging, configuration, clock);
    ConcessionPages concessionPages =
        new ConcessionPages(database, page, plant, proposed, concessions, standings, clock);
    Disputes disputes = new Disputes(parts);
    LawPages lawPages = new LawPages(database, page, families, laws, clock);
    WhatIfPages whatIfPages =
        new WhatIfPages(
            database,
            page,
            plant,
            channels,
            judging,
            proposed,
            judgedBy,
            calibrations,
            laws,
            clock);
    PlannersPages planners =
        PlannersPages.of(
            new PlannersPages.Needed(
                database,
                page,
                plant,
                channels,
                judging,
                configuration,
                calibrations,
                judgedBy,
                proposed,
                gapReadings,
                register,
                standings,
                remedies,
                base,
                clock,
                this::identity));
    CausePages causePages =
        new CausePages(
            database, page, new LoopsOnRecord(plant, judging, calibrations, clock), parts, laws);
    DriftPages driftPages =
        new DriftPages(
            database,
            page,
            plant,
            register,
            configuration,
            calibrations,
            judgedBy,
            new DueLoops(),
            clock);
    AttachmentPages attachmentPages =
        new AttachmentPages(database, page, new Attachments(), ownersOfFiles());
    CheckPages checkPages = new CheckPages(database, page, plant, gapReadings, fieldChecks, clock);
    CircuitPages circuitPages = new CircuitPages(database, page, plant, register, circuits);
    return List.of(
        new StockPages(database, page, families, clock),
        new PlantPages(database, page, plant, parts, judging, clock),
        new ChangePages(database, page, plant, parts, judging, configuration, clock),
        new DifferencePages(database, page, plant, parts, clock),
        new CorrectionPages(
            database,
            page,
            plant,
            parts,
            judging,
            configuration,
            new Corrections(parts, judging, standings, clock),
            calibrations::takenAt,
            disputes,
            clock),
        new CurvePages(
            database,
            page,
            plant,
            register,
            configuration,
            judgedBy,
            calibrations,
            standards,
            clock),
        new CalibrationData(
            database, plant, register, judgedBy, configuration, calibrations, clock),
        new LoopData(database, plant, register, judging, clock),
        new LoopPages(
            database,
            page,
            plant,
            channels,
            judging,
            List.of(
                disputes,
                effects,
                whatIfPages,
                concessionPages,
                calibrationPages,
                causePages,
                checkPages,
                attachmentPages,
                driftPages,
                circuitPages,
                planners.panel(),
                new LabelsOfLoop()),
            clock),
        concessionPages,
        calibrationPages,
        standardPages,
        impactPages,
        whatIfPages,
        signingPages,
        certificatePages,
        new ReachPages(database, page, standards, calibrations, evidence, this::clockShown, clock),
        new AuthorisationPages(database, page, signing, standards, people, this::clockShown, clock),
        lawPages,
        new RoundPages(database, page, plant, judging, gapRounds, clock),
        causePages,
        checkPages,
        attachmentPages,
        driftPages,
        circuitPages,
        new FamilyEditPages(database, page, families, familyVersions, profiles, alloys),
        new SheetPages(database, page, families, sheets),
        new AlloyPages(database, page, alloys),
        planners,
        new RegisterPages(
            database,
            page,
            register,
            families,
            profiles,
            search,
            List.of(
                disputes,
                new SheetOfPart(register, sheets),
                new BarrierOfPart(circuits),
                new LabelOfPart(),
                new CalibrationsOfPart(calibrations)),
            List.of(
                new SheetsOfFamily(sheets),
                new VersionsOfFamily(families, familyVersions),
                lawPages),
            clock),
        new PlantEditPages(database, page, plant, families),
        new ExchangePages(database, page, plant, remedies),
        new LabelPages(
            database, page, plant, register, families, search, configuration, base, clock),
        new ScanPages(
            database,
            page,
            plant,
            register,
            base,
            new ScanTools(
                judging,
                configuration,
                proposed,
                parts,
                StandardRules.book(),
                families,
                search,
                clock)),
        new FindPages(database, page, plant, register, search, base),
        new ImportPages(importing, page),
        new JournalPages(database, page, this::clockShown),
        new PeoplePages(people, page));
  }

  /** Which database this is, for what leaves it and may come back. */
  private UUID identity() {
    return Installation.of(database).map(Installation::uuid).orElseThrow();
  }

  private Map<OwnerKind, Owner.Finder> ownersOfFiles() {
    return Map.of(
        OwnerKind.LOOP,
        (sql, tag) ->
            plant
                .pointTagged(sql, tag)
                .map(
                    point ->
                        new Owner(
                            OwnerKind.LOOP,
                            point.id().number(),
                            point.tag(),
                            "/loops/" + PathSegment.of(point.tag()))),
        OwnerKind.CALIBRATION,
        (sql, number) ->
            calibrations
                .find(sql, number)
                .map(
                    kept ->
                        new Owner(
                            OwnerKind.CALIBRATION,
                            kept.id(),
                            kept.number(),
                            "/calibrations/" + kept.number())),
        OwnerKind.STANDARD,
        (sql, code) ->
            standards
                .find(sql, code)
                .map(
                    standard ->
                        new Owner(
                            OwnerKind.STANDARD,
                            standard.id(),
                            standard.code(),
                            "/standards/" + PathSegment.of(standard.code()))),
        OwnerKind.PART,
        (sql, id) ->
            id.matches("\\d{1,18}")
                ? register
                    .component(sql, new ComponentId(Long.parseLong(id)))
                    .map(
                        part ->
                            new Owner(
                                OwnerKind.PART,
                                part.id().number(),
                                part.inWords(),
                                "/parts/" + part.id().number()))
                : Optional.empty(),
        OwnerKind.CHECK,
        (sql, number) ->
            fieldChecks
                .numbered(sql, number)
                .map(id -> new Owner(OwnerKind.CHECK, id, number, "/checks/" + number)));
  }

  /** What belongs to no site is shown on the clock of the first one. */
  private ZoneId clockShown() {
    return database.read(plant::sites).stream()
        .findFirst()
        .map(site -> site.zone())
        .orElse(ZoneOffset.UTC);
  }

  private void pointChanged(Tx tx, PointId point) {
    standings.refreshAtEnd(tx, List.of(point.number()));
  }

  /** A corrected length or a quarantine changes how the loops are judged that hold the part. */
  private void factsChanged(Tx tx, ComponentId component) {
    standings.refreshAtEnd(
        tx,
        register.now(tx.sql(), component).stream()
            .map(Whereabouts::point)
            .collect(Collectors.toCollection(TreeSet::new)));
    standings.refreshAtEnd(tx, circuits.pointsWith(tx.sql(), List.of(component.number())));
  }

  private void familyChanged(Tx tx, FamilyId family) {
    familyVersions.add(tx, family);
    standings.refreshAtEnd(tx, fitted.pointsOfFamily(tx.sql(), family));
  }

  private void sheetChanged(Tx tx, Subject subject) {
    FamilyId family = subject.family();
    PartKind kind = subject.kind();
    standings.refreshAtEnd(
        tx,
        family == null
            ? fitted.pointsOfModel(tx.sql(), kind, subject.maker(), subject.model())
            : fitted.pointsOfFamily(tx.sql(), kind, family));
    if (kind.place() == PartKind.Place.AFTER_DRIVER) {
      Set<Long> barriers =
          family == null
              ? fitted.partsOfModel(tx.sql(), kind, subject.maker(), subject.model())
              : fitted.partsOfFamily(tx.sql(), kind, family);
      standings.refreshAtEnd(tx, circuits.pointsWith(tx.sql(), barriers));
    }
  }

  /** With the first group, loops are asked for a shaft alloy that were not before. */
  private void alloysChanged(Tx tx, boolean first) {
    standings.refreshAtEnd(tx, plant.pointsInUse(tx.sql(), !first));
  }

  /**
   * Fills a demo database with the invented plant; does nothing in one that has a site.
   *
   * @param announce run before, if there is something to fill
   */
  public void fillDemo(Runnable announce) {
    if (database.read(plant::sites).isEmpty()) {
      announce.run();
      DemoPlant.load(database, importing, plant, clock);
      DemoEquipment.register(database, standards, clock);
      DemoSheets.enter(database, plant, families, sheets, alloys);
    }
  }

  /**
   * What would put loops of a train, or of the whole plant, back into balance.
   *
   * @param train its code; null for the whole plant
   */
  public Proposal propose(@Nullable String train) {
    return database.read(
        sql ->
            remedies.propose(
                sql,
                train == null
                    ? OptionalLong.empty()
                    : OptionalLong.of(remedies.trainCalled(sql, train))));
  }

  public GapRounds gapRounds() {
    return gapRounds;
  }

  public Importing importing() {
    return importing;
  }

  public Database database() {
    return database;
  }

  public People people() {
    return people;
  }

  @Override
  public void close() {
    database.close();
  }
}
