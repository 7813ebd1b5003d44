package loopwright.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.importing.ImportFile;
import loopwright.importing.ImportPlan;
import loopwright.importing.ImportReceipt;
import loopwright.importing.Importing;
import loopwright.plant.Plant;
import loopwright.plant.SiteDetails;
import loopwright.sheet.Complaint;

/**
 * Loads the invented plant into a fresh demo database, through the same import that a shop's files
 * go through. Every date is shifted by whole days, so that the reference day of the files becomes
 * today (UTC); the files hold nothing later than their reference day.
 */
public final class DemoPlant {
  private static final String FOLDER = "/demo-data/";
  private static final List<String> FILES =
      List.of("families.csv", "components.csv", "points.csv", "placements.csv", "calibrations.csv");
  private static final String REASON = "The invented plant, as of today.";

  private DemoPlant() {}

  /**
   * @param database fresh, with the tolerance profiles that come with the program
   */
  public static ImportReceipt load(
      Database database, Importing importing, Plant plant, InstantSource clock) {
    List<ImportFile> files = files(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC));
    ImportPlan plan = importing.plan(files, Optional.empty());
    if (!plan.isToWrite()) {
      throw new IllegalStateException(
          "The demo's own files don't load: "
              + plan.problems().stream().findFirst().map(Complaint::message).orElse("no rows"));
    }
    ImportReceipt receipt =
        importing.run(plan.id(), reason -> Act.ofProgram(Importing.ACT, reason), REASON);
    settle(database, plant);
    return receipt;
  }

  /** The files as an import takes them, their dates as of that day. */
  static List<ImportFile> files(LocalDate today) {
    long days = ChronoUnit.DAYS.between(referenceDay(), today);
    return FILES.stream()
        .map(name -> new ImportFile(name, ShiftedDates.of(name, bytes(name), days)))
        .toList();
  }

  static LocalDate referenceDay() {
    Properties properties = new Properties();
    try (InputStream in = open("demo.properties")) {
      properties.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return LocalDate.parse(properties.getProperty("reference-day"));
  }

  private static byte[] bytes(String name) {
    try (InputStream in = open(name)) {
      return in.readAllBytes();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static InputStream open(String name) {
    return Objects.requireNonNull(
        DemoPlant.class.getResourceAsStream(FOLDER + name), "packed with the program");
  }

  /** The plant has been in the register for years: what is unknown there is meant to be seen. */
  private static void settle(Database database, Plant plant) {
    Act act = Act.ofProgram("site", "The invented plant is read in.");
    database.write(
        act,
        tx -> {
          plant
              .sites(tx.sql())
              .forEach(
                  site -> {
                    SiteDetails read =
                        new SiteDetails(site.code(), site.name(), site.zone(), false);
                    plant.changeSite(tx, site.id(), site.version(), read);
                  });
          return null;
        });
  }
}
