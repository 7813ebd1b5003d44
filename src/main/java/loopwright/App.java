package loopwright;

import java.time.InstantSource;
import java.util.OptionalLong;
import loopwright.db.Database;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.demo.DemoEquipment;
import loopwright.demo.DemoKit;
import loopwright.demo.DemoOutages;
import loopwright.demo.DemoPlant;
import loopwright.demo.DemoSheets;
import loopwright.exchange.Proposal;
import loopwright.gapround.GapRounds;
import loopwright.importing.Importing;
import loopwright.journal.JournalStore;
import loopwright.label.LabelBase;
import loopwright.outage.Outages;
import loopwright.people.People;
import loopwright.symptom.Suspicions;
import loopwright.temporary.TemporaryFits;
import loopwright.web.Page;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.jspecify.annotations.Nullable;

/**
 * The program over one database: what is made for it stands in {@link Workings}, its pages in
 * {@link SitePages}.
 */
public final class App implements AutoCloseable {
  private final Workings of;

  private App(Workings of) {
    this.of = of;
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
      App app = new App(new Workings(database, clock));
      app.of.profiles.seed(database);
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
    Page page = new Page(site, SitePages.NAV);
    return Web.start(settings, page, of.people, of.clock, new SitePages(of, page, base).all());
  }

  /**
   * Fills a demo database with the invented of.plant; does nothing in one that has a site.
   *
   * @param announce run before, if there is something to fill
   */
  public void fillDemo(Runnable announce) {
    if (of.database.read(of.plant::sites).isEmpty()) {
      announce.run();
      DemoPlant.load(of.database, of.importing, of.plant, of.clock);
      DemoEquipment.register(of.database, of.standards, of.clock);
      DemoSheets.enter(of.database, of.plant, of.families, of.sheets, of.alloys);
      DemoKit.keep(of.database, of.register, of.profiles, of.calibrations, of.kits, of.clock);
    }
  }

  /**
   * Gives the invented planner something to do; nothing where an outage is planned already.
   *
   * @param planner number of the person who did it
   */
  public void planDemo(long planner) {
    Outages outages = new Outages(of.plant);
    if (of.database.read(outages::newest).isEmpty()) {
      DemoOutages.plan(
          of.database,
          of.plant,
          outages,
          new TemporaryFits(of.configuration, of.clock),
          new Suspicions(),
          of.clock,
          planner);
    }
  }

  /**
   * What would put loops of a train, or of the whole of.plant, back into balance.
   *
   * @param train its code; null for the whole plant
   */
  public Proposal propose(@Nullable String train) {
    return of.database.read(
        sql ->
            of.remedies.propose(
                sql,
                train == null
                    ? OptionalLong.empty()
                    : OptionalLong.of(of.remedies.trainCalled(sql, train))));
  }

  public GapRounds gapRounds() {
    return of.gapRounds;
  }

  public Importing importing() {
    return of.importing;
  }

  public Database database() {
    return of.database;
  }

  public People people() {
    return of.people;
  }

  @Override
  public void close() {
    of.database.close();
  }
}
