package loopwright.db;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jooq.DSLContext;
import org.jooq.conf.RenderQuotedNames;
import org.jooq.conf.Settings;
import org.jooq.impl.DSL;

/** Somebody who holds the database file and may do anything behind the program's back. */
public final class Owner implements AutoCloseable {
  private final Connection connection;
  private final DSLContext sql;

  public Owner(Database database) {
    Place place = database.place();
    connection = Database.ownerConnection(place);
    sql =
        DSL.using(
            connection,
            Database.dialect(place),
            new Settings().withRenderQuotedNames(RenderQuotedNames.EXPLICIT_DEFAULT_UNQUOTED));
  }

  /** Does something that no journal tells of. */
  public <R> R secretly(Function<DSLContext, R> work) {
    return work.apply(sql);
  }

  /** Takes away whatever would refuse wrong content: checks and references. */
  public void disarm() {
    try (Statement statement = connection.createStatement()) {
      for (String kind : List.of("FOREIGN KEY", "CHECK", "UNIQUE")) {
        for (String drop : constraints(statement, kind)) {
          statement.execute(drop);
        }
      }
    } catch (SQLException broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static List<String> constraints(Statement statement, String kind) throws SQLException {
    List<String> drops = new ArrayList<>();
    try (ResultSet found =
        statement.executeQuery(
            "SELECT table_name, constraint_name FROM information_schema.table_constraints"
                + " WHERE LOWER(table_schema) = 'public' AND constraint_type = '"
                + kind
                + "' AND constraint_name NOT LIKE '%not_null'")) {
      while (found.next()) {
        drops.add("ALTER TABLE " + found.getString(1) + " DROP CONSTRAINT " + found.getString(2));
      }
    }
    return drops;
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException broken) {
      throw new IllegalStateException(broken);
    }
  }
}
