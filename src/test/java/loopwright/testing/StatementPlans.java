package loopwright.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.db.Place;

/** The statements that an embedded database was asked, and how its engine finds their rows. */
public final class StatementPlans implements AutoCloseable {
  private static final Pattern WAY = Pattern.compile("/\\* (PUBLIC\\.[^*]*)\\*/", Pattern.DOTALL);
  private static final Pattern LIST = Pattern.compile("(\\w+) (?:IN|= ANY)\\(");

  private static final Pattern OF_ONE_THING = Pattern.compile("_ID = (?:cast|\\\\?)| group by ");

  private final Connection owner;

  /** Remembers statements from now on. */
  public StatementPlans(Place place) {
    try {
      owner = DriverManager.getConnection(place.url(), place.owner(), place.ownerPassword());
      try (Statement statement = owner.createStatement()) {
        statement.execute("SET QUERY_STATISTICS_MAX_ENTRIES 20000");
        statement.execute("SET QUERY_STATISTICS TRUE");
      }
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }

  /** Different statements, lists of whatever length counted as one. */
  public List<String> statements() {
    List<String> found = new ArrayList<>();
    TreeSet<String> shapes = new TreeSet<>();
    try (Statement statement = owner.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT sql_statement FROM information_schema.query_statistics")) {
      while (rows.next()) {
        String sql = rows.getString(1);
        String shape = sql.replaceAll("(?:cast\\(\\? as bigint\\), |\\?, )+", "");
        if (sql.startsWith("select") && shapes.add(shape)) {
          found.add(sql);
        }
      }
      return found;
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }

  /**
   * Ways into an index with a list of keys behind another condition: the engine ignores the list.
   */
  public List<String> listsPassedOver() {
    List<String> found = new ArrayList<>();
    for (String sql : statements()) {
      Matcher way = WAY.matcher(plan(sql));
      while (way.find()) {
        String taken = way.group(1);
        if (passesOver(taken)) {
          found.add(taken.replaceAll("\\s+", " ") + " in " + sql);
        }
      }
    }
    return found;
  }

  /**
   * Statements that want the first few rows of an order, and for that sort all there are: not those
   * that belong to one thing, of which there are few, and not sums.
   */
  public List<String> sortedWhole() {
    return statements().stream()
        .filter(sql -> sql.contains("order by") && sql.contains("fetch next"))
        .filter(sql -> !OF_ONE_THING.matcher(sql).find())
        .filter(sql -> !plan(sql).contains("/* index sorted"))
        .toList();
  }

  /** Whether another condition stands before the list, other than one value of the first column. */
  private boolean passesOver(String way) {
    String conditions = way.substring(way.indexOf(':') + 1).strip();
    Matcher list = LIST.matcher(conditions);
    if (!list.find() || list.start() == 0) {
      return false;
    }
    String first = firstColumn(way.substring("PUBLIC.".length(), way.indexOf(':')));
    return !conditions.contains(first + " = ");
  }

  private String firstColumn(String index) {
    try (PreparedStatement question =
        owner.prepareStatement(
            "SELECT column_name FROM information_schema.index_columns"
                + " WHERE index_name = ? AND ordinal_position = 1")) {
      question.setString(1, index);
      try (ResultSet rows = question.executeQuery()) {
        return rows.next() ? rows.getString(1) : "";
      }
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }

  private String plan(String sql) {
    try (PreparedStatement explain = owner.prepareStatement("EXPLAIN " + sql)) {
      int asked = explain.getParameterMetaData().getParameterCount();
      for (int i = 1; i <= asked; i++) {
        explain.setNull(i, Types.NULL);
      }
      try (ResultSet rows = explain.executeQuery()) {
        rows.next();
        return rows.getString(1);
      }
    } catch (SQLException failed) {
      throw new IllegalStateException(sql, failed);
    }
  }

  @Override
  public void close() {
    try {
      owner.close();
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }
}
