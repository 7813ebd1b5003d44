package loopwright.db;

import java.util.Locale;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Texts in capitals, as key columns hold them so that a tag is found however it is typed. */
public final class Capitals {
  private Capitals() {}

  /**
   * As the database itself writes it: engines agree on the letters A to Z only, and the key columns
   * are checked against the engine's own capitals.
   */
  public static String of(DSLContext sql, String text) {
    if (text.chars().allMatch(c -> c < 128)) {
      return text.toUpperCase(Locale.ROOT);
    }
    return sql.select(DSL.upper(DSL.val(text))).fetchSingle().value1();
  }
}
