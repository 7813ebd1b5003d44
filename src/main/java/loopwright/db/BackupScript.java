package loopwright.db;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.regex.Pattern;
import org.h2.util.ScriptReader;
import org.jspecify.annotations.Nullable;

/**
 * Runs the script of a backup in a fresh database. Only statements of the kinds that a backup
 * consists of are run, and none that names a function reaching outside the database: whoever hands
 * over a backup must not be able to run something on this machine.
 */
final class BackupScript {
  private static final Pattern KINDS =
      Pattern.compile(
          "(CREATE USER IF NOT EXISTS|CREATE (CACHED|MEMORY) TABLE|CREATE (UNIQUE )?INDEX"
              + "|CREATE UNIQUE NULLS NOT DISTINCT INDEX|ALTER TABLE \\S+ ADD CONSTRAINT"
              + "|INSERT INTO|GRANT|COMMENT ON) .*",
          Pattern.DOTALL);

  /** Of what may stand in those statements: what reads or writes files or loads classes. */
  private static final Pattern REACHING_OUT =
      Pattern.compile(
          "\\b(FILE_READ|FILE_WRITE|CSVREAD|CSVWRITE|LINK_SCHEMA|ENGINE|SELECT|TABLE_DISTINCT"
              + "|UNNEST|JAVA_OBJECT|OTHER|ABORT_SESSION|CANCEL_SESSION)\\b",
          Pattern.CASE_INSENSITIVE);

  private BackupScript() {}

  /**
   * @throws Wrong if a statement is of another kind or fails
   */
  static void run(Path script, Place.Folder into) throws IOException, Wrong {
    // durable only at the end: until then the whole can be done again
    String url = into.appUrl() + ";DB_CLOSE_ON_EXIT=FALSE";
    try (Connection owner = DriverManager.getConnection(url, into.owner(), into.ownerPassword());
        Statement statement = owner.createStatement();
        Reader in = Files.newBufferedReader(script)) {
      owner.setAutoCommit(false);
      ScriptReader statements = new ScriptReader(in);
      statements.setSkipRemarks(true);
      long number = 0;
      @Nullable String each;
      while ((each = statements.readStatement()) != null) {
        number++;
        run(statement, each.strip(), number);
      }
      owner.commit();
    } catch (SQLException unwritable) {
      throw new Wrong("the new database can't be written: " + BackupFile.oneLine(unwritable));
    }
  }

  private static void run(Statement statement, String sql, long number) throws Wrong {
    if (sql.isEmpty()) {
      return;
    }
    String bare = bare(sql);
    boolean grants = bare.startsWith("GRANT ");
    if (!KINDS.matcher(bare).matches() || (!grants && REACHING_OUT.matcher(bare).find())) {
      throw new Wrong(
          "statement %s of its script, \u201c%s\u201d, is none that a backup consists of"
              .formatted(number, beginning(bare)));
    }
    try {
      statement.execute(sql);
    } catch (SQLException failed) {
      throw new Wrong(
          "statement %s of its script fails: %s".formatted(number, BackupFile.oneLine(failed)));
    }
  }

  /** The statement with its texts emptied; a dollar-quoted one, which no backup has, stays. */
  private static String bare(String sql) {
    StringBuilder bare = new StringBuilder();
    boolean inText = false;
    boolean inName = false;
    for (int i = 0; i < sql.length(); i++) {
      char c = sql.charAt(i);
      if (!inText && !inName && sql.startsWith("$$", i)) {
        return "$$";
      }
      inName ^= c == '"' && !inText;
      boolean quote = c == '\'' && !inName;
      inText ^= quote;
      if (quote || !inText) {
        bare.append(c);
      }
    }
    return bare.toString();
  }

  private static String beginning(String sql) {
    String line = sql.replaceAll("\\s+", " ");
    return line.length() <= 60 ? line : line.substring(0, 60) + "…";
  }

  /** Why the script can't be run. */
  static final class Wrong extends Exception {
    private static final long serialVersionUID = 1L;

    Wrong(String why) {
      super(why);
    }
  }
}
