package loopwright.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.journal.JournalStore;

/** Empty databases in memory; copied from one that was migrated once, which is much quicker. */
public final class MigratedMemory {
  private MigratedMemory() {}

  /** A database of its own, migrated. */
  public static Place place(String name) {
    Place.Memory place = new Place.Memory(name + "-" + UUID.randomUUID());
    try (Connection owner = connection(place);
        Statement statement = owner.createStatement()) {
      for (String line : Script.LINES) {
        statement.execute(line);
      }
      return place;
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }

  private static Connection connection(Place place) throws SQLException {
    return DriverManager.getConnection(place.url(), place.owner(), place.ownerPassword());
  }

  private static final class Script {
    static final List<String> LINES = lines();

    private static List<String> lines() {
      Place place = new Place.Memory("migrated-" + UUID.randomUUID());
      Database migrated = Database.open(place, new JournalStore(), InstantSource.system());
      try (Connection owner = connection(place);
          Statement statement = owner.createStatement();
          var rows = statement.executeQuery("SCRIPT")) {
        List<String> lines = new ArrayList<>();
        while (rows.next()) {
          lines.add(rows.getString(1));
        }
        return lines;
      } catch (SQLException failed) {
        throw new IllegalStateException(failed);
      } finally {
        migrated.close();
      }
    }
  }
}
