package loopwright.db;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.problem.Refused;
import org.jooq.exception.DataAccessException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What there can be only once was entered by somebody else between the look and the write. Who
 * writes looks first, so that a sentence says what is there already; where two look at one moment,
 * the database lets the first one in and this tells the second.
 */
final class OnlyOnce {
  private static final Logger LOG = LoggerFactory.getLogger(OnlyOnce.class);

  /** Unique violation, on both engines. */
  private static final String UNIQUE_VIOLATION = "23505";

  private static final Pattern CONSTRAINT =
      Pattern.compile("\\b([a-z][a-z_0-9]*?)_(?:uq|pk)(?:_index|\\b)", Pattern.CASE_INSENSITIVE);

  private OnlyOnce() {}

  /** A refusal if a unique constraint was broken, else what failed. */
  static RuntimeException refusalOr(DataAccessException failed) {
    if (!UNIQUE_VIOLATION.equals(failed.sqlState())) {
      return failed;
    }
    Refused refused = new Refused(DbProblem.MEANWHILE, what(String.valueOf(failed.getMessage())));
    refused.initCause(failed);
    LOG.warn("Only one of two could be served: {}", refused.getMessage());
    return refused;
  }

  /** The constraint's name as words: {@code calibration signature role}. */
  static String what(String message) {
    Matcher name = CONSTRAINT.matcher(message);
    return name.find()
        ? name.group(1).toLowerCase(Locale.ROOT).replace('_', ' ')
        : "the same record";
  }
}
