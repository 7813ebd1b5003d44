package loopwright;

import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import loopwright.alloy.AlloyBook;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.calibration.LatestAsLefts;
import loopwright.calibration.RegisteredProfiles;
import loopwright.circuit.Circuits;
import loopwright.concession.Concessions;
import loopwright.datasheet.DataSheets;
import loopwright.datasheet.Subject;
import loopwright.db.Database;
import loopwright.db.Installation;
import loopwright.db.Tx;
import loopwright.exposure.ImpactReviews;
import loopwright.family.FamilyVersions;
import loopwright.fieldcheck.FieldChecks;
import loopwright.fieldcheck.GapReadings;
import loopwright.gapround.GapRounds;
import loopwright.gapround.Suspicions;
import loopwright.importing.Features;
import loopwright.importing.Importing;
import loopwright.kit.Kits;
import loopwright.lengthlaw.LengthLaws;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.loop.LoopsOffBalance;
import loopwright.loop.RegisteredParts;
import loopwright.loop.Standings;
import loopwright.matching.PartKind;
import loopwright.matching.rules.StandardRules;
import loopwright.mounting.Mountings;
import loopwright.people.PasswordAgain;
import loopwright.people.People;
import loopwright.plant.Channels;
import loopwright.plant.PlacesAsJudged;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.register.ComponentId;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyId;
import loopwright.register.FittedParts;
import loopwright.register.PartSearch;
import loopwright.register.PartsAsJudged;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.register.Whereabouts;
import loopwright.remedy.Remedies;
import loopwright.signing.Signing;
import loopwright.spare.Spares;
import loopwright.standard.Standards;
import loopwright.symptom.CauseWeights;

/**
 * Every object behind the pages, each made once, and which loops are judged anew when something
 * changes.
 */
final class Workings {
  final Database database;
  final InstantSource clock;
  final Plant plant = new Plant(this::pointChanged);
  final Channels channels = new Channels(this::pointChanged);
  final FamilyBook families = new FamilyBook(this::familyChanged);
  final FamilyVersions familyVersions = new FamilyVersions();
  final DataSheets sheets = new DataSheets(this::sheetChanged);
  final AlloyBook alloys = new AlloyBook(this::alloysChanged);
  final Circuits circuits = new Circuits(this::pointChanged);
  final FittedParts fitted = new FittedParts();
  final ToleranceProfiles profiles = new ToleranceProfiles();
  final PartSearch search = new PartSearch();
  final Register register = new Register(this::factsChanged);
  final RegisteredProfiles judgedBy = new RegisteredProfiles(profiles, register, families, plant);
  final People people;
  final PasswordAgain password;
  final RegisteredParts parts;
  final Concessions concessions;
  final Judging judging;
  final Standings standings;
  final Configuration configuration;
  final ImpactReviews impacts = new ImpactReviews();
  final Calibrations calibrations;
  final Kits kits;
  final Standards standards = new Standards();
  final Mountings mountings = new Mountings();
  final Signing signing;
  final Importing importing;
  final Remedies remedies;
  final LengthLaws laws = new LengthLaws(families);
  final CauseWeights causeWeights = new CauseWeights();
  final GapRounds gapRounds;
  final GapReadings gapReadings;
  final FieldChecks fieldChecks;

  Workings(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
    this.people = new People(database);
    this.password = new PasswordAgain(people, clock);
    this.parts = new RegisteredParts(new PartsAsJudged(sheets), register, search);
    this.concessions = new Concessions(clock);
    this.judging =
        new Judging(
            new Judging.Sources(
                parts,
                new PlacesAsJudged()::places,
                circuits,
                alloys::asJudged,
                new LatestAsLefts(judgedBy),
                concessions,
                Spares.promises(),
                Kits.keptTogether(register),
                laws),
            StandardRules.book());
    this.standings = new Standings(judging, clock);
    this.configuration = new Configuration(parts, judging, standings, clock);
    this.calibrations = new Calibrations(configuration, standings, impacts, clock);
    this.kits = new Kits(register, standings);
    this.signing = new Signing(calibrations, standards);
    Features taken =
        new Features(
            families, profiles, register, plant, channels, configuration, calibrations, standards);
    this.importing = new Importing(database, taken, clock);
    this.gapReadings = new GapReadings(clock);
    this.fieldChecks =
        new FieldChecks(
            judging,
            channels,
            calibrations,
            new Evidence.Book(calibrations, profiles, standards),
            new RegisteredProfiles(profiles, register, families, plant),
            clock);
    this.gapRounds =
        new GapRounds(
            database,
            plant,
            gapReadings,
            new Suspicions(judging, laws, causeWeights, clock),
            clock);
    this.remedies = new Remedies(new LoopsOffBalance(judging, clock), families, plant);
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

  /** Which database this is, for what leaves it and may come back. */
  UUID identity() {
    return Installation.of(database).map(Installation::uuid).orElseThrow();
  }

  /** What belongs to no site is shown on the clock of the first one. */
  ZoneId clockShown() {
    return database.read(plant::sites).stream()
        .findFirst()
        .map(site -> site.zone())
        .orElse(ZoneOffset.UTC);
  }
}
