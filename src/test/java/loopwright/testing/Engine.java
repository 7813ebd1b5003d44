package loopwright.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.InstantSource;
import java.util.UUID;
import loopwright.db.ChangeLog;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * The engines that store tests run on. PostgreSQL is used when the environment says where one is;
 * where outside things are required ({@code LOOPWRIGHT_REQUIRE_EXTERNAL=true}) its absence fails.
 */
public enum Engine {
  H2,
  POSTGRESQL;

  /** For instance {@code jdbc:postgresql://127.0.0.1:5432/postgres}; see DEVELOPERS.md. */
  private static final String URL = System.getenv("LOOPWRIGHT_TEST_POSTGRES_URL");

  private static final String USER = env("LOOPWRIGHT_TEST_POSTGRES_USER", "postgres");
  private static final String PASSWORD = env("LOOPWRIGHT_TEST_POSTGRES_PASSWORD", "");

  /** A fresh, migrated database. */
  public Database open(InstantSource clock) {
    return open(new JournalStore(), clock);
  }

  public Database open(ChangeLog log, InstantSource clock) {
    return Database.open(this == H2 ? memory() : server(), log, clock);
  }

  private static Place memory() {
    return MigratedMemory.place("test");
  }

  private static Place server() {
    if (URL == null) {
      String missing =
          "PostgreSQL store tests skipped: set LOOPWRIGHT_TEST_POSTGRES_URL, or run .ci/run.";
      if (required()) {
        Assertions.fail(missing);
      }
      Assumptions.abort(missing);
    }
    return create(" TEMPLATE " + Migrated.NAME);
  }

  /** Migrated once a run; copying it is much quicker than migrating each database. */
  private static final class Migrated {
    static final String NAME = migrate();

    private static String migrate() {
      Place.Server place = create("");
      Database.open(place, new JournalStore(), InstantSource.system()).close();
      return place.url().substring(place.url().lastIndexOf('/') + 1);
    }
  }

  private static Place.Server create(String how) {
    String name = "lw_" + UUID.randomUUID().toString().replace('-', '_');
    try (Connection admin = DriverManager.getConnection(URL, USER, PASSWORD)) {
      admin.createStatement().execute("CREATE DATABASE " + name + how);
    } catch (SQLException unreachable) {
      throw new IllegalStateException("PostgreSQL at " + URL + " does not answer.", unreachable);
    }
    String base = URL.substring(0, URL.lastIndexOf('/') + 1);
    return new Place.Server(base + name, USER, PASSWORD);
  }

  /** Whether a check that needs something outside must run instead of being skipped. */
  public static boolean required() {
    return "true".equals(System.getenv("LOOPWRIGHT_REQUIRE_EXTERNAL"));
  }

  private static String env(String name, String otherwise) {
    String found = System.getenv(name);
    return found == null ? otherwise : found;
  }
}
