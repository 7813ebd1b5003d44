package loopwright.importing;

import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.alloy.AlloyBook;
import loopwright.calibration.Calibrations;
import loopwright.calibration.FoundOut;
import loopwright.calibration.LatestAsLefts;
import loopwright.calibration.RegisteredProfiles;
import loopwright.circuit.Circuits;
import loopwright.datasheet.DataSheets;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.journal.JournalStore;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.loop.RegisteredParts;
import loopwright.loop.Standings;
import loopwright.matching.rules.StandardRules;
import loopwright.plant.Channels;
import loopwright.plant.PlacesAsJudged;
import loopwright.plant.Plant;
import loopwright.plant.PointWatch;
import loopwright.register.FactsWatch;
import loopwright.register.FamilyBook;
import loopwright.register.PartSearch;
import loopwright.register.PartsAsJudged;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standards;
import loopwright.testing.Engine;

/** A fresh database with everything an import needs; for tests. */
public final class ImportWorld implements AutoCloseable {
  public final Database database;
  public final Plant plant = new Plant(PointWatch.NOBODY);
  public final Channels channels = new Channels(PointWatch.NOBODY);
  public final Register register = new Register(FactsWatch.NOBODY);
  public final FamilyBook families = new FamilyBook();
  public final DataSheets sheets = new DataSheets(DataSheets.SheetWatch.NOBODY);
  public final AlloyBook alloys = new AlloyBook(AlloyBook.AlloyWatch.NOBODY);
  public final Circuits circuits = new Circuits(PointWatch.NOBODY);
  public final ToleranceProfiles profiles = new ToleranceProfiles();
  public final Standards standards = new Standards();
  public final Judging judging;
  public final Configuration configuration;
  public final Calibrations calibrations;
  public final Importing importing;

  public ImportWorld(Engine engine, InstantSource clock) {
    database = engine.open(clock);
    profiles.seed(database);
    RegisteredParts parts =
        new RegisteredParts(new PartsAsJudged(sheets), register, new PartSearch());
    judging =
        new Judging(
            new Judging.Sources(
                parts,
                new PlacesAsJudged()::places,
                circuits,
                alloys::asJudged,
                new LatestAsLefts(new RegisteredProfiles(profiles, register, families, plant)),
                loopwright.loop.Allowances.NONE),
            StandardRules.book());
    Standings standings = new Standings(judging, clock);
    configuration = new Configuration(parts, judging, standings, clock);
    calibrations = new Calibrations(configuration, standings, FoundOut.NOBODY, clock);
    importing =
        new Importing(
            database,
            new Features(
                families,
                profiles,
                register,
                plant,
                channels,
                configuration,
                calibrations,
                standards),
            clock);
  }

  /** Files by name and text, one after the other. */
  static List<ImportFile> files(String... namesAndTexts) {
    return Stream.iterate(0, i -> i < namesAndTexts.length, i -> i + 2)
        .map(
            i ->
                new ImportFile(
                    namesAndTexts[i], namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8)))
        .toList();
  }

  ImportPlan plan(String... namesAndTexts) {
    return importing.plan(files(namesAndTexts), Optional.empty());
  }

  ImportReceipt run(ImportPlan plan) {
    return importing.run(
        plan.id(), reason -> new Act(null, "A. Tester", "planner", Importing.ACT, reason), "test");
  }

  /** Plans and runs, and insists that nothing stands against it. */
  ImportReceipt take(String... namesAndTexts) {
    ImportPlan plan = plan(namesAndTexts);
    if (!plan.isGood()) {
      throw new AssertionError(plan.problems());
    }
    return run(plan);
  }

  long head() {
    return database.read(JournalStore::head);
  }

  @Override
  public void close() {
    database.close();
  }
}
