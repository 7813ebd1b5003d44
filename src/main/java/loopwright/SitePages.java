package loopwright;

import java.util.ArrayList;
import java.util.List;
import loopwright.alloy.AlloyPages;
import loopwright.attachment.AttachmentPages;
import loopwright.attachment.Attachments;
import loopwright.calibration.CalibrationData;
import loopwright.calibration.CalibrationListPages;
import loopwright.calibration.CalibrationPages;
import loopwright.calibration.CalibrationsOfPart;
import loopwright.calibration.CurvePages;
import loopwright.calibration.Evidence;
import loopwright.calibration.RecordPanel;
import loopwright.calibration.RegisteredProfiles;
import loopwright.calibration.UsesOfStandard;
import loopwright.certificate.CertificateBook;
import loopwright.certificate.CertificatePages;
import loopwright.circuit.BarrierOfPart;
import loopwright.circuit.CircuitPages;
import loopwright.concession.ConcessionPages;
import loopwright.datasheet.SheetOfPart;
import loopwright.datasheet.SheetPages;
import loopwright.datasheet.SheetsOfFamily;
import loopwright.drift.DriftPages;
import loopwright.drift.DuePages;
import loopwright.exposure.EffectPanels;
import loopwright.exposure.Effects;
import loopwright.exposure.ImpactPages;
import loopwright.family.FamilyEditPages;
import loopwright.family.VersionsOfFamily;
import loopwright.fieldcheck.CheckPages;
import loopwright.fieldcheck.CheckTrends;
import loopwright.gapround.RoundPages;
import loopwright.gapround.RoundSuspects;
import loopwright.importing.ImportPages;
import loopwright.journal.JournalPages;
import loopwright.kit.KitPages;
import loopwright.label.LabelBase;
import loopwright.label.LabelOfPart;
import loopwright.label.LabelPages;
import loopwright.label.LabelsOfLoop;
import loopwright.lengthlaw.LawPages;
import loopwright.loop.ChangePages;
import loopwright.loop.CorrectionPages;
import loopwright.loop.Corrections;
import loopwright.loop.Disputes;
import loopwright.loop.DueLoops;
import loopwright.loop.LoopData;
import loopwright.loop.LoopPages;
import loopwright.loop.Need;
import loopwright.loop.NeedsPages;
import loopwright.loop.PlantPages;
import loopwright.loop.Proposed;
import loopwright.matching.rules.StandardRules;
import loopwright.mounting.MountingPages;
import loopwright.past.DifferencePages;
import loopwright.people.PeoplePages;
import loopwright.plant.PlantEditPages;
import loopwright.reach.ReachPages;
import loopwright.register.RegisterPages;
import loopwright.remedy.ExchangePages;
import loopwright.scan.ScanPages;
import loopwright.scan.ScanTools;
import loopwright.search.FindPages;
import loopwright.signing.AuthorisationPages;
import loopwright.signing.SigningPages;
import loopwright.standard.StandardPages;
import loopwright.stock.StockPages;
import loopwright.symptom.CausePages;
import loopwright.symptom.LoopsOnRecord;
import loopwright.symptom.Suspicions;
import loopwright.symptom.WeightPages;
import loopwright.temporary.TemporaryFits;
import loopwright.temporary.TemporaryOfPart;
import loopwright.temporary.TemporaryPages;
import loopwright.web.NavItem;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.whatif.WhatIfPages;

/** Every page, made from the objects behind it, and the navigation. */
final class SitePages {
  static final List<NavItem> NAV =
      List.of(
          new NavItem("/", "Needs somebody", "needs"),
          new NavItem("/plant", "Plant", "plant"),
          new NavItem("/parts", "Parts", "parts"),
          new NavItem("/scan", "Scan check", "scan"),
          new NavItem("/calibrations", "Calibrations", "calibrations"),
          new NavItem("/cause", "Causes", "cause"),
          new NavItem("/exchanges", "Exchanges", "exchanges"),
          new NavItem("/outages", "Outages", "outages"),
          // from here on behind "More"; see web.Nav
          new NavItem("/stock", "Stock", "stock"),
          new NavItem("/concessions", "Concessions", "concessions"),
          new NavItem("/standards", "Standards", "standards"),
          new NavItem("/families", "Families", "families"),
          new NavItem("/profiles", "Profiles", "profiles"),
          new NavItem("/import", "Import", "import", Permission.PLAN),
          new NavItem("/record", "Record", "record"),
          new NavItem("/people", "People", "people", Permission.ADMINISTER));

  private final Workings of;
  private final Page page;
  private final LabelBase base;

  SitePages(Workings of, Page page, LabelBase base) {
    this.of = of;
    this.page = page;
    this.base = base;
  }

  /** The first page asks every feature that has something which needs somebody. */
  List<Pages> all() {
    List<Pages> all = new ArrayList<>(featurePages());
    List<Need.Source> needing =
        all.stream().filter(Need.Source.class::isInstance).map(Need.Source.class::cast).toList();
    all.add(new NeedsPages(of.database, page, of.standings, needing, of.clock));
    return all;
  }

  private List<Pages> featurePages() {
    RegisteredProfiles judgedBy = of.judgedBy;
    Effects worked = new Effects(of.plant, of.channels, of.calibrations, judgedBy);
    EffectPanels effects = new EffectPanels(worked);
    ImpactPages impactPages =
        new ImpactPages(
            of.database, page, of.plant, of.calibrations, worked, of.impacts, of.password);
    SigningPages signingPages =
        new SigningPages(
            of.database,
            page,
            of.plant,
            of.calibrations,
            of.profiles,
            of.signing,
            of.password,
            of.clock);
    Evidence.Book evidence = new Evidence.Book(of.calibrations, of.profiles, of.standards);
    CertificatePages certificatePages =
        new CertificatePages(
            of.database,
            page,
            new CertificateBook(
                of.plant, of.register, of.calibrations, evidence, of.signing, base, of.clock),
            of.clock);
    List<RecordPanel> recordPanels = List.of(effects, impactPages, signingPages, certificatePages);
    CalibrationPages calibrationPages =
        new CalibrationPages(
            of.database,
            page,
            of.plant,
            of.register,
            of.configuration,
            judgedBy,
            of.calibrations,
            of.standards,
            recordPanels,
            of.clock);
    StandardPages standardPages =
        new StandardPages(
            of.database,
            page,
            of.standards,
            new UsesOfStandard(of.calibrations, of.standards, of.plant),
            of::clockShown,
            of.clock);
    Proposed proposed = new Proposed(of.parts, of.judging, of.configuration, of.clock);
    ConcessionPages concessionPages =
        new ConcessionPages(
            of.database, page, of.plant, proposed, of.concessions, of.standings, of.clock);
    Disputes disputes = new Disputes(of.parts);
    LawPages lawPages = new LawPages(of.database, page, of.families, of.laws, of.clock);
    WhatIfPages whatIfPages =
        new WhatIfPages(
            of.database,
            page,
            of.plant,
            of.channels,
            of.judging,
            proposed,
            judgedBy,
            of.calibrations,
            of.laws,
            of.clock);
    TemporaryFits temporaryFits = new TemporaryFits(of.configuration, of.clock);
    TemporaryPages temporaryPages =
        new TemporaryPages(of.database, page, of.plant, of.register, temporaryFits, of.clock);
    Suspicions suspicions = new Suspicions();
    PlannersPages planners =
        PlannersPages.of(
            new PlannersPages.Needed(
                of.database,
                page,
                of.plant,
                of.channels,
                of.judging,
                of.configuration,
                of.calibrations,
                judgedBy,
                proposed,
                of.gapReadings,
                of.standards,
                worked,
                of.mountings,
                of.people,
                of.register,
                of.kits,
                of.families,
                of.standings,
                of.remedies,
                base,
                of.clock,
                of::identity,
                temporaryFits,
                List.of(temporaryFits, suspicions, new RoundSuspects(of.gapRounds, of.clock))));
    CausePages causePages =
        new CausePages(
            of.database,
            page,
            new LoopsOnRecord(of.plant, of.judging, of.calibrations, of.clock),
            of.parts,
            of.laws,
            of.causeWeights,
            suspicions);
    WeightPages weightPages = new WeightPages(of.database, page, of.causeWeights);
    DuePages duePages = new DuePages(of.database, page, new DueLoops(), of.clock);
    DriftPages driftPages =
        new DriftPages(
            of.database,
            page,
            of.plant,
            of.register,
            of.configuration,
            of.calibrations,
            judgedBy,
            new DueLoops(),
            new CheckTrends(of.gapReadings, of.fieldChecks),
            of.clock);
    AttachmentPages attachmentPages =
        new AttachmentPages(
            of.database,
            page,
            new Attachments(),
            new FileOwners(of).finders(),
            sql -> of.plant.clocks(sql, List.of()).otherwise());
    KitPages kitPages =
        new KitPages(
            of.database,
            page,
            of.plant,
            of.register,
            proposed,
            of.calibrations,
            of.kits,
            of::clockShown);
    CheckPages checkPages =
        new CheckPages(of.database, page, of.plant, of.gapReadings, of.fieldChecks, of.clock);
    MountingPages mountingPages = new MountingPages(of.database, page, of.plant, of.mountings);
    CircuitPages circuitPages =
        new CircuitPages(of.database, page, of.plant, of.register, of.circuits);
    return List.of(
        new StockPages(of.database, page, of.families, of.clock),
        new PlantPages(of.database, page, of.plant, of.parts, of.judging, of.clock),
        new ChangePages(
            of.database, page, of.plant, of.parts, of.judging, of.configuration, of.clock),
        new DifferencePages(of.database, page, of.plant, of.parts, of.clock),
        new CorrectionPages(
            of.database,
            page,
            of.plant,
            of.parts,
            of.judging,
            of.configuration,
            new Corrections(of.parts, of.judging, of.standings, of.clock),
            of.calibrations::takenAt,
            disputes,
            of.clock),
        new CurvePages(
            of.database,
            page,
            of.plant,
            of.register,
            of.configuration,
            judgedBy,
            of.calibrations,
            of.standards,
            of::clockShown,
            of.clock),
        new CalibrationData(
            of.database,
            of.plant,
            of.register,
            judgedBy,
            of.configuration,
            of.calibrations,
            of.clock),
        new LoopData(of.database, of.plant, of.register, of.judging, of.clock),
        new LoopPages(
            of.database,
            page,
            of.plant,
            of.channels,
            of.judging,
            List.of(
                disputes,
                effects,
                whatIfPages,
                concessionPages,
                calibrationPages,
                causePages,
                checkPages,
                attachmentPages,
                duePages,
                circuitPages,
                mountingPages,
                planners.panel(),
                temporaryPages,
                new LabelsOfLoop()),
            List.of(calibrationPages, checkPages),
            of.clock),
        concessionPages,
        new CalibrationListPages(of.database, page, of.plant, of.calibrations, recordPanels),
        calibrationPages,
        standardPages,
        impactPages,
        whatIfPages,
        signingPages,
        certificatePages,
        new ReachPages(
            of.database,
            page,
            of.standards,
            of.calibrations,
            evidence,
            of.impacts,
            of::clockShown,
            of.clock),
        new AuthorisationPages(
            of.database, page, of.signing, of.standards, of.people, of::clockShown, of.clock),
        lawPages,
        new RoundPages(of.database, page, of.plant, of.gapRounds),
        causePages,
        weightPages,
        checkPages,
        attachmentPages,
        driftPages,
        duePages,
        circuitPages,
        mountingPages,
        new FamilyEditPages(
            of.database, page, of.families, of.familyVersions, of.profiles, of.alloys),
        new SheetPages(of.database, page, of.families, of.sheets),
        new AlloyPages(of.database, page, of.alloys),
        kitPages,
        planners,
        temporaryPages,
        new RegisterPages(
            of.database,
            page,
            of.register,
            of.families,
            of.profiles,
            of.search,
            List.of(
                disputes,
                new SheetOfPart(of.register, of.sheets),
                new BarrierOfPart(of.circuits),
                new LabelOfPart(),
                kitPages,
                new CalibrationsOfPart(of.calibrations, of.plant),
                new TemporaryOfPart(temporaryFits, of::clockShown, of.clock)),
            List.of(
                new SheetsOfFamily(of.sheets),
                new VersionsOfFamily(of.families, of.familyVersions),
                lawPages),
            of.clock),
        new PlantEditPages(of.database, page, of.plant, of.families),
        new ExchangePages(of.database, page, of.plant, of.remedies),
        new LabelPages(
            of.database,
            page,
            of.plant,
            of.register,
            of.families,
            of.search,
            of.configuration,
            base,
            of.clock),
        new ScanPages(
            of.database,
            page,
            of.plant,
            of.register,
            base,
            new ScanTools(
                of.judging,
                of.configuration,
                proposed,
                of.parts,
                StandardRules.book(),
                of.families,
                of.search,
                of.clock)),
        new FindPages(of.database, page, of.plant, of.register, of.search, base),
        new ImportPages(of.importing, page),
        new JournalPages(of.database, page, of::clockShown),
        new PeoplePages(of.people, page));
  }
}
