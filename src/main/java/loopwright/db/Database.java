package loopwright.db;

import static loopwright.db.gen.Tables.CHANGE;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.function.Function;
import loopwright.problem.Refused;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.CoreErrorCode;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.RenderQuotedNames;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.exception.SQLStateClass;
import org.jooq.impl.DSL;

/**
 * The database and the one door for writing. Shared by all threads. Nobody else holds the root
 * context: readers get one for the length of a call, writers a {@link Tx}.
 */
public final class Database implements AutoCloseable {
  private static final int SNAPSHOT_OF_H2 = 6;
  private static final long COMPACT_UP_TO_BYTES = 300_000_000L;

  private static final String NO_HISTORY =
      "it holds tables, but not the list of how they were made.";

  private final Place place;

  /** Kept open as long as the pool: an embedded engine closes with its last connection. */
  private final Connection owner;

  private final HikariDataSource pool;
  private final DSLContext root;
  private final ChangeLog log;
  private final InstantSource clock;
  private final WriteTurn turn;

  private Database(
      Place place, Connection owner, HikariDataSource pool, ChangeLog log, InstantSource clock) {
    this.place = place;
    this.owner = owner;
    this.pool = pool;
    this.log = log;
    this.clock = clock;
    this.turn = new WriteTurn(dialect(place) == SQLDialect.H2, WriteTurn.USUAL_PATIENCE);
    this.root = DSL.using(pool, dialect(place), settings());
  }

  /**
   * Opens it, migrating first. A failed migration or a schema of another version stops here.
   *
   * @throws Refused with a {@link DbProblem} if the database is in use or of another version
   */
  public static Database open(Place place, ChangeLog log, InstantSource clock) {
    if (place instanceof Place.Folder folder) {
      EngineVersion.refuseOther(folder);
    }
    Connection owner = ownerConnection(place);
    try {
      migrate(place);
      AppAccount.ensure(DSL.using(owner, dialect(place)));
      Database database = new Database(place, owner, pool(place), log, clock);
      database.root.transaction(tx -> log.prepare(tx.dsl()));
      return database;
    } catch (RuntimeException failed) {
      closeQuietly(owner, failed);
      throw Damage.refusalOr(place, failed);
    }
  }

  /**
   * Opens one that must be there already: looking at a wrong folder makes no database in it.
   *
   * @throws Refused {@link DbProblem#NO_DATABASE} if there is none, and as {@link #open}
   */
  public static Database openExisting(Place.Folder place, ChangeLog log, InstantSource clock) {
    refuseMissing(place);
    return open(place, log, clock);
  }

  static void refuseMissing(Place.Folder place) {
    if (!place.exists()) {
      throw new Refused(DbProblem.NO_DATABASE, place.shown());
    }
    if (place.file().toFile().length() == 0) {
      throw new Refused(DbProblem.UNREADABLE, place.shown(), "its file is empty.");
    }
  }

  private static void closeQuietly(Connection owner, RuntimeException because) {
    try {
      owner.close();
    } catch (SQLException too) {
      because.addSuppressed(too);
    }
  }

  private static HikariDataSource pool(Place place) {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(place.appUrl());
    boolean h2 = dialect(place) == SQLDialect.H2;
    config.setUsername(h2 ? AppAccount.NAME : place.owner());
    config.setPassword(h2 ? "" : place.ownerPassword());
    if (!h2) {
      config.setConnectionInitSql("SET ROLE " + AppAccount.NAME);
    }
    config.setMaximumPoolSize(12);
    config.setPoolName("loopwright");
    return new HikariDataSource(config);
  }

  private static void migrate(Place place) {
    try {
      Flyway.configure()
          .dataSource(place.url(), place.owner(), place.ownerPassword())
          .locations("classpath:db/migration")
          .placeholders(Map.of("stored", dialect(place) == SQLDialect.H2 ? "" : "STORED"))
          .load()
          .migrate();
    } catch (FlywayValidateException other) {
      Refused refused =
          new Refused(
              DbProblem.OTHER_SCHEMA, place.shown(), firstLine(String.valueOf(other.getMessage())));
      refused.initCause(other);
      throw refused;
    } catch (FlywayException failed) {
      if (failed.getErrorCode() == CoreErrorCode.NON_EMPTY_SCHEMA_WITHOUT_SCHEMA_HISTORY_TABLE) {
        Refused refused = new Refused(DbProblem.UNREADABLE, place.shown(), NO_HISTORY);
        refused.initCause(failed);
        throw refused;
      }
      throw failed;
    }
  }

  /** A connection of the owner, for migration, backup and maintenance. Close it. */
  static Connection ownerConnection(Place place) {
    try {
      return DriverManager.getConnection(place.url(), place.owner(), place.ownerPassword());
    } catch (SQLException refusedByEngine) {
      throw Damage.refusal(place, refusedByEngine);
    }
  }

  /** Reads; each statement sees what is committed when it begins. */
  public <R> R read(Function<DSLContext, R> question) {
    return question.apply(root);
  }

  /** Reads everything as of one moment, for passes over much. */
  public <R> R snapshot(Function<DSLContext, R> question) {
    try (Connection connection = pool.getConnection()) {
      int usual = connection.getTransactionIsolation();
      connection.setTransactionIsolation(
          dialect(place) == SQLDialect.H2
              ? SNAPSHOT_OF_H2
              : Connection.TRANSACTION_REPEATABLE_READ);
      connection.setAutoCommit(false);
      try {
        return question.apply(DSL.using(connection, dialect(place), settings()));
      } catch (RuntimeException failed) {
        throw Damage.refusalOr(place, failed);
      } finally {
        connection.rollback();
        connection.setAutoCommit(true);
        connection.setTransactionIsolation(usual);
      }
    } catch (SQLException broken) {
      throw new IllegalStateException("The database could not be read.", broken);
    }
  }

  /**
   * The one door for writing: runs the work in one transaction as one change of one actor and
   * appends it to the journal before commit. Anything thrown undoes all of it.
   */
  public <R> R write(Act act, Function<Tx, R> work) {
    return inTurn(to -> written(to, act, work));
  }

  /**
   * @throws Refused {@link DbProblem#AT_ONCE} if the engine undid it in favour of another change,
   *     {@link DbProblem#MEANWHILE} if somebody else entered first what there can be only once
   */
  private <R> R inTurn(Function<DSLContext, R> work) {
    try {
      return turn.take(() -> root.transactionResult(to -> work.apply(to.dsl())));
    } catch (DataAccessException failed) {
      if (failed.sqlStateClass() == SQLStateClass.C40_TRANSACTION_ROLLBACK) {
        throw new Refused(DbProblem.AT_ONCE);
      }
      throw OnlyOnce.refusalOr(failed);
    }
  }

  private <R> R written(DSLContext sql, Act act, Function<Tx, R> work) {
    Instant at = clock.instant().truncatedTo(ChronoUnit.MICROS);
    Tx tx = new Tx(sql, log, act, at, newChange(sql, act, at));
    R result = work.apply(tx);
    tx.finish();
    return result;
  }

  /** Writes tables that can be worked out again from the others and are not journaled. */
  public <R> R derive(Function<DSLContext, R> work) {
    return inTurn(work);
  }

  private static long newChange(DSLContext sql, Act act, Instant at) {
    Long id =
        sql.insertInto(CHANGE)
            .set(CHANGE.MADE_AT, Tx.moment(at))
            .set(CHANGE.ACTOR_ID, act.actorId())
            .set(CHANGE.ACTOR_NAME, act.actorName())
            .set(CHANGE.ACTOR_ROLE, act.actorRole())
            .set(CHANGE.WHAT, act.what())
            .set(CHANGE.REASON, act.reason())
            .returningResult(CHANGE.ID)
            .fetchSingle(CHANGE.ID);
    return id;
  }

  public Place place() {
    return place;
  }

  /** Closes the pool, then the embedded database, compacting it unless that would take long. */
  @Override
  public void close() {
    pool.close();
    boolean compact =
        place instanceof Place.Folder folder
            && folder.file().toFile().length() < COMPACT_UP_TO_BYTES;
    try (owner) {
      if (dialect(place) == SQLDialect.H2) {
        owner.createStatement().execute(compact ? "SHUTDOWN COMPACT" : "SHUTDOWN");
      }
    } catch (SQLException broken) {
      throw Damage.refusal(place, broken);
    }
  }

  static SQLDialect dialect(Place place) {
    return place instanceof Place.Server ? SQLDialect.POSTGRES : SQLDialect.H2;
  }

  private static Settings settings() {
    return new Settings()
        .withRenderQuotedNames(RenderQuotedNames.EXPLICIT_DEFAULT_UNQUOTED)
        .withReturnAllOnUpdatableRecord(true)
        .withExecuteLogging(false);
  }

  private static String firstLine(String text) {
    return text.lines().findFirst().orElse("");
  }
}
