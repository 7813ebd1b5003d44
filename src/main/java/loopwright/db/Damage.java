package loopwright.db;

import java.sql.SQLException;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.problem.Refused;
import org.h2.mvstore.MVStoreException;

/** Tells a database that can't be opened or read from a defect of the program. */
final class Damage {
  /** H2: the file is locked by another process. */
  private static final int LOCKED = 90020;

  /**
   * H2: a table or column that the migrations made is gone (its definition was among what can't be
   * read), the file is corrupt, or reading it failed inside the engine.
   */
  private static final Set<Integer> LOST = Set.of(42102, 42103, 42104, 42122, 90028, 90030, 50000);

  private Damage() {}

  /** Why the database could not be opened or closed. */
  static Refused refusal(Place place, SQLException because) {
    Refused refused =
        because.getErrorCode() == LOCKED
            ? new Refused(DbProblem.IN_USE, place.shown())
            : new Refused(DbProblem.UNREADABLE, place.shown(), firstLine(because));
    refused.initCause(because);
    return refused;
  }

  /** A refusal if the file is damaged, else what failed. */
  static RuntimeException refusalOr(Place place, RuntimeException failed) {
    return causes(failed)
        .filter(Damage::tellsOfDamage)
        .findFirst()
        .<RuntimeException>map(damage -> damaged(place, damage))
        .orElse(failed);
  }

  private static boolean tellsOfDamage(Throwable cause) {
    return cause instanceof MVStoreException
        || (cause instanceof SQLException sql && LOST.contains(sql.getErrorCode()));
  }

  private static Refused damaged(Place place, Throwable damage) {
    Refused refused = new Refused(DbProblem.UNREADABLE, place.shown(), firstLine(damage));
    refused.initCause(damage);
    return refused;
  }

  private static Stream<Throwable> causes(Throwable failed) {
    return Stream.iterate(failed, cause -> cause != null, Throwable::getCause);
  }

  private static String firstLine(Throwable thrown) {
    String line = String.valueOf(thrown.getMessage()).lines().findFirst().orElse("");
    return line.endsWith(".") ? line : line + ".";
  }
}
